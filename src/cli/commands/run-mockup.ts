/** What `mockup` does. */

import { usualShow } from '../../output/mockup/index.ts';
import { shownDrawing } from '../../output/view/index.ts';
import { defaultName } from '../default-name.ts';
import { drawnPlan } from '../drawn-plan.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { printJson, say } from '../messages.ts';
import { checkOutputOption } from '../output-option.ts';
import { sheetsPdf } from '../render-pdf.ts';
import { describeDesign, designAsData, outwardReach } from '../report-design.ts';
import {
  describeCorrection,
  describeSheets,
  layOutSheets,
  pagesWords,
  readSheetOptions,
  sheetsAsData,
} from '../sheets.ts';
import { readShow } from '../show.ts';
import { planned } from '../steps.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import type { MockupOptions } from './mockup.ts';

export const runMockup = async (io: Io, file: string, options: MockupOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const without = readWithout(options);
  const { plan, templates, design: whole, inputs, placed } = await planned(io, file);
  const layout = readSheetOptions(options, plan.units, plan.paper);
  const { design, scope } = readShow(whole, options.show ?? usualShow(whole));
  const output = await openOutput(
    io,
    { asked: options.output, usual: defaultName(file, '-mockup.pdf') },
    inputs,
  );
  const drawing = shownDrawing(await drawnPlan(io, design, plan, scope, without, placed), { without });
  const sheets = layOutSheets(drawing, layout, options);
  const summary = describeDesign(design, plan.marks.style, plan.channels);
  const pdf = await sheetsPdf(drawing, sheets, { title: plan.title, summary, units: plan.units });
  await output.write(pdf.bytes);
  await sayUnprintable(io, plan.title, templates);
  for (const line of summary) await say(io, line);
  await say(io, `${output.name}: ${scope.label}, ${describeSheets(sheets)}; ${pagesWords(pdf.pages)}`);
  for (const line of describeCorrection(sheets.measured)) await say(io, line);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      shows: scope.label,
      ...sheetsAsData(sheets),
      ...designAsData(design, outwardReach(plan.channels)),
    });
};
