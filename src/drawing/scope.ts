/** How much of a design a picture shows: all of it, one side, one repeat, or a corner with its neighbours. */

import {
  type Design,
  designOf,
  halvesAt,
  isClosed,
  type Placed,
  type PlacedSide,
  repeatMarks,
} from '../swag/index.ts';

export interface Scope {
  readonly label: string;
  readonly halves: readonly Placed[];
  /** For each side shown, the stretch of its start line as drawn, mm from its left end, and the repeats on it. */
  readonly stretches: readonly Stretch[];
}

export interface Stretch {
  readonly side: PlacedSide;
  readonly from: number;
  readonly to: number;
  readonly repeats: readonly number[];
}

/** The same stretch as another row of the design sees it. */
export const onRow = (stretch: Stretch, { sides }: Design): Stretch => ({
  ...stretch,
  side: sides.find(({ run }) => run.name === stretch.side.run.name)!,
});

export type Scoped =
  /** `design` is the one to draw: a side by itself is laid at its own length. */
  | { readonly ok: true; readonly design: Design; readonly scope: Scope }
  | { readonly ok: false; readonly known: readonly string[] };

/** What may be asked for, in the words that the answer to a wrong one gives. */
const scopeNames = (design: Design): readonly string[] => [
  'all',
  ...(design.sides.some((s) => isClosed(s.run)) ? [] : ['side']),
  'repeat',
  ...(design.sides.length > 1 ? ['corner', ...design.sides.map((s) => s.run.name)] : []),
  ...design.sides.map((s) => `${s.run.name} 1`),
  ...cornersOf(design),
];

/** Takes `all`, `side`, `repeat`, `corner`, a side (`top`), a repeat (`top 2`), or a corner (`corner top right`); a round frame is one side. */
export const scopeOf = (whole: Design, wanted: string): Scoped => {
  const name = wanted
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');
  const alone = whole.sides.find((s, i) => s.run.name === name || (name === 'side' && i === 0));
  const design = alone ? designOf(whole.field, whole.fit, alone.run.name) : whole;
  const first = design.sides[0]!;
  const found =
    name === 'all'
      ? wholeScope(design)
      : name === 'side'
        ? sideScope(design, first)
        : name === 'repeat'
          ? repeatScope(design, first, 0)
          : name.includes('corner')
            ? cornerScope(design, name === 'corner' ? cornersOf(design)[0] : name)
            : namedScope(design, name);
  return found ? { ok: true, design, scope: found } : { ok: false, known: scopeNames(design) };
};

const allRepeats = (side: PlacedSide): readonly number[] => Array.from({ length: side.places }, (_, i) => i);

export const wholeScope = (design: Design): Scope => ({
  label: `the whole ${design.field.name}`,
  halves: design.halves,
  stretches: design.sides.map((side) => ({ side, from: 0, to: side.run.drawn, repeats: allRepeats(side) })),
});

const sideScope = (design: Design, side: PlacedSide): Scope => ({
  label: design.sides.length === 1 ? `the whole ${design.field.name}` : `the ${side.run.name} side`,
  halves: design.halves.filter((h) => h.side === side.run.name),
  stretches: [{ side, from: 0, to: side.run.drawn, repeats: allRepeats(side) }],
});

const repeatScope = (design: Design, side: PlacedSide, index: number): Scope | undefined => {
  if (!(index >= 0 && index < side.places)) return undefined;
  const { join, centre } = repeatMarks(side, index);
  const halves = halvesAt(side, index);
  const repeat = `${side.run.name} ${index + 1}`;
  return {
    label: `one repeat, ${repeat}`,
    halves: design.halves.filter((h) => h.repeat === repeat),
    stretches: [
      {
        side,
        from: halves.includes('first') ? join : centre,
        to: halves.includes('second') ? 2 * centre - join : centre,
        repeats: [index],
      },
    ],
  };
};

const namedScope = (design: Design, name: string): Scope | undefined => {
  const [sideName, number] = name.split(' ');
  const side = design.sides.find((s) => s.run.name === sideName);
  if (!side) return undefined;
  if (number === undefined) return sideScope(design, side);
  return /^\d{1,4}$/.test(number) ? repeatScope(design, side, Number(number) - 1) : undefined;
};

/** The corners as pairs of sides: the first ends, seen from the seam, where the second begins. */
const cornerPairs = ({ sides }: Design): readonly (readonly [PlacedSide, PlacedSide])[] =>
  sides.flatMap((side) => {
    const next = sides.find((s) => s !== side && s.run.name === side.run.next);
    return next ? [[side, next]] : [];
  });

const cornersOf = (design: Design): readonly string[] =>
  cornerPairs(design).map(([, after]) => `corner ${after.run.begins}`);

const cornerScope = (design: Design, name: string | undefined): Scope | undefined => {
  const pair = cornerPairs(design).find(([, { run }]) => `corner ${run.begins}` === name);
  if (!pair) return undefined;
  const [before, after] = pair;
  const last = before.places - 1;
  // Where a side ends with half a swag, the whole one beside it is shown too; and of two kinds both are.
  const beside = Math.min(
    Math.max(halvesAt(before, last).length === 1 ? 1 : 0, before.cells.length - 1),
    last,
  );
  const shown = Array.from({ length: beside + 1 }, (_, i) => i);
  const atEnd = shown.map((i) => last - i);
  const repeats = [
    ...atEnd.map((i) => `${before.run.name} ${i + 1}`),
    ...shown.map((i) => `${after.run.name} ${i + 1}`),
  ];
  return {
    label: `the ${after.run.begins} corner with a repeat on each side`,
    halves: design.halves.filter((h) => h.repeat === name || repeats.includes(h.repeat)),
    stretches: [
      {
        side: before,
        from: repeatMarks(before, last - beside).join,
        to: before.run.drawn,
        repeats: atEnd.toReversed(),
      },
      {
        side: after,
        from: 0,
        to: repeatMarks(after, Math.min(beside, after.places - 1)).stop + after.fit.seat.gap / 2,
        repeats: shown.filter((i) => i < after.places),
      },
    ],
  };
};
