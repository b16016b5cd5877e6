/** Which patch of a picture is the template: a filled shape, or the line drawn round one. */

import type { Problem } from '../document/index.ts';
import type { Blob } from './blobs.ts';

interface Shape {
  readonly kind: 'solid' | 'line';
  readonly outer: Blob;
  /** The ground that a line closes in; undefined for a filled shape. */
  readonly inner: Blob | undefined;
  /** Patches right inside the shape: holes in a filled one, ink within a line. */
  readonly inside: readonly Blob[];
  /** Smaller shapes beside it. */
  readonly leftOut: readonly Blob[];
}

export type ShapeResult =
  | { readonly ok: true; readonly shape: Shape }
  | { readonly ok: false; readonly problem: Problem };

/** Smaller than this on its longer side (mm), and with less area (mm²), it is a letter or a blot. */
export const SHORTEST = 20;
const LEAST_AREA = 100;
/** A patch that has more ink than this share of what its outline holds is a filled shape. */
const SOLID_SHARE = 0.5;
/** A second shape this large beside the first makes it a guess which is meant. */
const SECOND_SHARE = 0.25;

/** Pieces of a broken line. */
const MOST_LINES = 5;

/** What is filled by so much of what a line round it holds is the body of acrylic, and the line its rim. */
const BODY_SHARE = 0.7;

/**
 * `mmPerPixel` is about right for the whole picture; `considered` leaves out what is not to be looked at. What `isRuler`
 * is no template where there is anything else.
 */
export const findShape = (
  blobs: readonly Blob[],
  mmPerPixel: number,
  considered: (blob: Blob) => boolean,
  isRuler: (blob: Blob) => boolean,
): ShapeResult => {
  const enclosed = blobs.map((b) => b.area);
  // A blob stands behind the one round it, so that one pass from the last adds everything up.
  for (let i = blobs.length - 1; i >= 0; i--) {
    const { around } = blobs[i]!;
    if (around >= 0) enclosed[around]! += enclosed[i]!;
  }
  const square = mmPerPixel * mmPerPixel;
  const all = blobs.flatMap((blob, index) => {
    const isLarge = sideOf(blob) * mmPerPixel >= SHORTEST && enclosed[index]! * square >= LEAST_AREA;
    return blob.inked && isLarge && considered(blob) ? [{ blob, index, size: enclosed[index]! }] : [];
  });
  const rulers = all.filter(({ blob }) => blob.around >= 0 && isRuler(blob));
  const others = all.filter((one) => !rulers.includes(one));
  const large = others.some(({ blob }) => blob.around >= 0) ? others : all;
  const solid = large.filter(({ blob, size }) => blob.area >= SOLID_SHARE * size);
  // A solid patch beside a much larger drawn outline is a shadow or a label.
  const whole = large.filter(({ blob }) => blob.around >= 0);
  const kind = solid.some(({ blob }) => blob.around >= 0) ? 'solid' : 'line';
  const choices = whole
    .filter((c) => solid.includes(c) === (kind === 'solid'))
    .sort((a, b) => b.size - a.size);
  const [first, second] = choices;
  if (!first) {
    if (large.length > 0) return refuse(RUNS_OFF);
    // A long thin patch or two is a line that someone drew; many are grass.
    const long = blobs.filter((b) => b.inked && considered(b) && sideOf(b) * mmPerPixel >= SHORTEST);
    return refuse(long.length > 0 && long.length <= MOST_LINES ? OPEN_LINE : NOTHING);
  }
  if (second && second.size >= SECOND_SHARE * first.size) return refuse(TWO);
  const inside = blobs.filter((b) => b.around === first.index);
  const isWithin = (blob: Blob, index: number): boolean => {
    for (let at = blob.around; at >= 0; at = blobs[at]!.around) if (at === index) return true;
    return false;
  };
  const rim =
    kind === 'solid'
      ? whole.find(({ index, size }) => isWithin(first.blob, index) && first.size >= BODY_SHARE * size)
      : undefined;
  const outer = rim ?? first;
  const leftOut = whole
    .map((c) => c.blob)
    .filter((b) => b !== outer.blob && !isWithin(b, outer.index) && !rulers.some((r) => r.blob === b));
  if (kind === 'solid')
    return { ok: true, shape: { kind, outer: outer.blob, inner: undefined, inside, leftOut } };
  const inner = inside.reduce((a, b) => (b.area > a.area ? b : a), inside[0]!);
  if (!inner || !(inner.area >= SOLID_SHARE * first.size)) return refuse(OPEN_LINE);
  const innerIndex = blobs.indexOf(inner);
  return {
    ok: true,
    shape: { kind, outer: first.blob, inner, inside: blobs.filter((b) => b.around === innerIndex), leftOut },
  };
};

const sideOf = (b: Blob): number => Math.max(b.maxX - b.minX, b.maxY - b.minY) + 1;

const refuse = (problem: Problem): ShapeResult => ({ ok: false, problem });

const NOTHING: Problem = {
  code: 'no-shape',
  message: 'there is no template in this picture',
  expected: `one filled shape, or one closed line, at least ${SHORTEST} mm long, on a plain ground`,
};
const RUNS_OFF: Problem = {
  code: 'shape-runs-off',
  message: 'the shape runs off the picture',
  expected: 'the whole template with ground all round it',
};
const TWO: Problem = {
  code: 'two-shapes',
  message: 'there are two shapes in this picture',
  expected: 'one template in each picture',
  hint: 'cut the picture so that it shows one',
};
export const OPEN_LINE: Problem = {
  code: 'open-line',
  message: 'the line round the template is not closed, or it is crossed by others',
  expected: 'one closed line, or one filled shape',
  hint: 'close it with the pencil, and take the picture again; where the lines are etched, draw round the template on paper and take a picture of that',
};
