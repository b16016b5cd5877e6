/** The same drawing by the program's own steps: the plan of sheets, then the PDF. */

import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import type { StyledDrawing } from '../../src/drawing/index.ts';
import { writeSheets } from '../../src/output/pdf/index.ts';
import { layOut } from '../../src/pagination/index.ts';
import type { Places } from './by-hand.ts';

const font = (name: string): Uint8Array => readFileSync(`node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`);
const fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };

export const layOutOurs = (drawing: StyledDrawing) => layOut(drawing, { paper: 'letter' });

export const writeOurs = (drawing: StyledDrawing, plan: ReturnType<typeof layOutOurs>): Promise<Uint8Array> =>
  writeSheets(drawing, plan, {
    title: drawing.title,
    summary: [],
    cautions: [],
    units: 'in',
    deflate: (bytes) => deflateSync(bytes),
    fonts,
  });

export const placesOf = (plan: ReturnType<typeof layOutOurs>): Places => {
  if (plan.turned) throw new Error('The sheets lie turned: the hand-written file does not turn.');
  return {
    width: plan.width,
    height: plan.height,
    margin: plan.live.minX,
    sheets: plan.sheets.map((s) => ({ label: s.label, ...s.window })),
  };
};
