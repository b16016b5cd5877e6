/**
 * What is quilted outside the swags: one fill for the whole band, and for a picture of less of it what of that fill
 * lies there.
 */

import { type Fill, type FillResult, fillNamed } from '../fill/index.ts';
import {
  boxesTouch,
  clipperOf,
  isEmptyRegion,
  movePath,
  ORIGIN,
  openPath,
  type Path,
  pathLength,
  pieceBox,
  type Region,
  regionBox,
} from '../geometry/index.ts';
import type { Fill as FillChoice, Plan } from '../plan/index.ts';
import {
  type Design,
  type OpenArea,
  ofRow,
  openAreaOf,
  type Placed,
  rowsOf,
  rowsShown,
  shownLines,
  wholeOf,
  windowOf,
} from '../swag/index.ts';
import type { ToFill } from './too-fine.ts';

/** What fills an open area of a design, on its quilt, or the square at one of its corners. */
export interface OpenFilled {
  readonly kind: OpenArea['kind'] | 'corner square';
  /** Of a corner square the repeats that end beside it: it is shown with both, and its thread is theirs. */
  readonly beside?: readonly string[];
  /** Counted from 1. */
  readonly row: number;
  /** The fill's name. */
  readonly fill: string;
  readonly paths: readonly Path[];
  readonly continuous: boolean;
}

/** Lines of quilting a quarter of an inch apart read as texture at arm's length. Common practice, no source. */
export const USUAL_SPACING = 6.35;
export const USUAL_SEED = 1;

const NO_LIMIT = 'without a limit (within) nothing says how far from the frame it goes, so it is left empty';

/** What a plan asks for outside the swags of a row, before it is made. */
export interface OpenAsked extends ToFill {
  readonly row: Design;
  readonly area: OpenArea;
  readonly choice: FillChoice;
}

export const openAsked = (design: Design, plan: Plan): readonly OpenAsked[] =>
  rowsOf(wholeOf(design)).flatMap((row) => {
    const kind = row.beyond ? 'between' : 'background';
    const choice = plan.fills[kind];
    const fill = choice && fillNamed(choice.kind);
    if (!choice || !fill || !('fill' in fill)) return [];
    const area = openAreaOf(row, plan.channels);
    const { spacing = USUAL_SPACING } = choice;
    return [{ row, area, choice, fill, spacing, regions: [area.region], path: ['fills', kind] }];
  });

/** Fills it, and says what a person should know of it. */
export const fillOpenAreas = (
  asked: readonly OpenAsked[],
): { readonly open: readonly OpenFilled[]; readonly messages: readonly string[] } => {
  const open: OpenFilled[] = [];
  const messages: string[] = [];
  for (const { row, area, choice, fill } of asked) {
    const { kind } = area;
    const made = fillOpenArea(fill, area, choice);
    // That an area is empty is not the fill's doing.
    const of = isEmptyRegion(area.region) ? kind : `${kind}: ${fill.name}`;
    messages.push(...made.messages.map((message) => ofRow(row, `${of}: ${message}`)));
    const { paths, continuous } = made;
    if (paths.length > 0) open.push({ kind, row: row.row, fill: fill.name, paths, continuous });
  }
  return { open, messages };
};

/** One fill in an open area; where it finds no way through the whole, in every repeat's share of it, alike in all. */
export const fillOpenArea = (
  fill: Fill,
  { region, repeats, sides, echoed, kind, radius }: OpenArea,
  choice: Omit<FillChoice, 'kind'> = {},
): FillResult => {
  if (isEmptyRegion(region)) {
    const why = kind === 'background' ? NO_LIMIT : 'nothing is left to fill';
    return { paths: [], continuous: true, messages: [why] };
  }
  const options = {
    spacing: choice.spacing ?? USUAL_SPACING,
    seed: choice.seed ?? USUAL_SEED,
    ...(choice.angle === undefined ? {} : { angle: choice.angle }),
  };
  // A frame's own middle is the quilt's origin, and its lines stand as the quilt does.
  const around = sides ? { sides } : { axis: { at: ORIGIN, angle: Math.PI / 2 } };
  const whole = fill.fill(region, options, { echoed, radius, ...around });
  if (whole.paths.length > 0) return { ...whole, messages: [...new Set(whole.messages)] };
  const each = repeats.map(({ region: own, axis, places }) => ({
    made: fill.fill(own, options, axis ? { radius, axis } : { radius }),
    places: [...places.values()],
  }));
  return {
    paths: each.flatMap(({ made, places }) =>
      places.flatMap((place) => made.paths.map((path) => movePath(path, place))),
    ),
    continuous: false,
    messages: [...new Set(each.flatMap(({ made }) => made.messages))],
  };
};

/** What of a whole design's open fills lies where some halves of a design do, as these are drawn. */
export const openShown = (
  open: readonly OpenFilled[],
  design: Design,
  halves: readonly Placed[],
): readonly OpenFilled[] => {
  if (open.length === 0) return open;
  const rows = rowsShown(design, halves);
  const wholes = rowsOf(wholeOf(design));
  return open.flatMap((filled) => {
    if (filled.beside)
      return filled.beside.every((name) => halves.some(({ repeat }) => repeat === name)) ? [filled] : [];
    const at = filled.row - 1;
    const paths = shownLines(filled.paths, wholes[at]!, rows[at]!.row, rows[at]!.halves);
    return paths.length > 0 ? [{ ...filled, paths }] : [];
  });
};

/** For every half of a whole design the length (mm) of open fills in its repeat. */
export const openLengths = (open: readonly OpenFilled[], design: Design): ReadonlyMap<Placed, number> => {
  const found = new Map<Placed, number>();
  for (const row of rowsOf(design)) {
    const pieces = open
      .filter((filled) => filled.row === row.row && !filled.beside)
      .flatMap(({ paths }) => paths.flatMap((p) => p.pieces))
      .map((piece) => ({ path: openPath([piece]), box: pieceBox(piece) }));
    for (const { beside = [], paths } of row.row === 1 ? open : []) {
      const length = paths.reduce((sum, path) => sum + pathLength(path), 0);
      const theirs = row.halves.filter(({ repeat }) => beside.includes(repeat));
      for (const half of theirs) found.set(half, (found.get(half) ?? 0) + length / theirs.length);
    }
    if (pieces.length === 0) continue;
    const lengthIn = (window: Region): number => {
      const clip = clipperOf(window);
      const box = regionBox(window);
      let sum = 0;
      for (const p of pieces)
        if (boxesTouch(p.box, box)) for (const part of clip(p.path)) sum += pathLength(part);
      return sum;
    };
    const byRepeat = new Map<string, Placed[]>();
    for (const half of row.halves) byRepeat.set(half.repeat, [...(byRepeat.get(half.repeat) ?? []), half]);
    for (const halves of byRepeat.values()) {
      const sum = halves.reduce((all, half) => all + lengthIn(windowOf(half, row)), 0);
      for (const half of halves) found.set(half, (found.get(half) ?? 0) + (2 * sum) / halves.length);
    }
  }
  return found;
};
