/** A template's outline at true size, to lay the acrylic on; or its shape, filled. */

import { type KeyPath, type Place, ProblemError } from '../document/index.ts';
import { type Drawing, drawSilhouette, drawTemplate, SHEET, styled } from '../drawing/index.ts';
import type { Units } from '../length/index.ts';
import { type LayOutOptions, layOut, type SheetPlan } from '../pagination/index.ts';
import { describeFault, type Stitching, stitchTemplate } from '../swag/index.ts';
import type { Template } from '../template/index.ts';
import type { Made, Means } from './made.ts';
import { tapedSheets } from './taped-sheets.ts';
import { describeTemplate } from './template-facts.ts';
import { unprintable } from './unprintable.ts';

/** A template as it was read, where its file says what, and what a bare number in it is in. */
export interface TemplateFile {
  readonly template: Template;
  readonly placeAt: (path: KeyPath) => Place;
  readonly units: Units;
}

export interface OutlineWanted {
  /** mm; the outline itself does not depend on it. */
  readonly clearance: number;
  readonly solid?: boolean | undefined;
  readonly layout: LayOutOptions;
}

export interface Outline extends Made {
  readonly stitching: Stitching;
  readonly sheets: SheetPlan;
}

/** What the needle stitches round a template. Throws a ProblemError where no foot gets round it. */
export const stitchingOf = ({ template, placeAt }: TemplateFile, clearance: number): Stitching => {
  const stitched = stitchTemplate(template, clearance);
  if (stitched.ok) return stitched.stitching;
  throw new ProblemError([
    { ...describeFault(template, clearance, stitched.fault), place: placeAt(['edge']) },
  ]);
};

/** Throws a ProblemError for what is wrong with the template's edge, and paper that does not do. */
export const outline = async (file: TemplateFile, wanted: OutlineWanted, means: Means): Promise<Outline> => {
  const { template } = file;
  const { title } = template;
  const stitching = stitchingOf(file, wanted.clearance);
  const drawing = styled(wanted.solid ? solidOf(file) : drawTemplate(stitching, title), SHEET);
  const { units } = file;
  const sheets = layOut(drawing, { ...wanted.layout, units });
  const words = { title, units, summary: describeTemplate(stitching) };
  const taped = await tapedSheets(drawing, sheets, words, means);
  return { ...taped, notices: await unprintable('', [template], means), stitching };
};

const solidOf = ({ template, placeAt }: TemplateFile): Drawing => {
  const drawn = drawSilhouette(template, template.title);
  if (drawn.ok) return drawn.drawing;
  throw new ProblemError([
    {
      code: 'no-silhouette',
      message: 'the edge comes in the way of straight sides, so it cannot be drawn as a filled shape',
      place: placeAt(['edge']),
      hint: 'take its outline',
    },
  ]);
};
