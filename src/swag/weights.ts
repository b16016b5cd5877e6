/**
 * What the order of fits goes by: every weight, and why it is what it is. A fit's cost is the sum of what its parts
 * cost, from 0 (nothing to wish for) upward. The weights are judgement, not measurement (common practice, no source);
 * they were set beside the table of borders in tests/swag/quilters-choice.test.ts.
 */

export interface Weight {
  readonly weight: number;
  readonly why: string;
}

/** From what counts most to what only decides between like ways. */
export const WEIGHTS = {
  unused: {
    weight: 4,
    why: 'Each time the swags and their channels reach only half as far across the border: a border is there to be filled, and an eye sees by how many times, not by how many inches, it is not.',
  },
  broken: {
    weight: 1,
    why: 'Swags that touch are one line; with any gap, however small, the thread is tied off at every swag.',
  },
  threadBreak: {
    weight: 0.005,
    why: 'Each time a gapped design starts and stops: twenty of them are an evening.',
  },
  gap: { weight: 1, why: 'A gap as wide as a swag: the wider it is, the less the row reads as one.' },
  unlike: {
    weight: 0.18,
    why: 'Depths that differ by a twentieth, or spans by a tenth, are just seen to along a border.',
  },
  lopsided: { weight: 0.3, why: 'Two opposite sides with different counts: they are seen at one glance.' },
  steep: {
    weight: 1.5,
    why: 'Twice as steep as the steepest drape: deeper than that over its span it is a spike.',
  },
  spiked: {
    weight: 3,
    why: 'Beyond a drape, twice as steep as what still has the look of one: it stands up like a fence, however much of the border it fills.',
  },
  flat: {
    weight: 1,
    why: 'Twice as flat as the flattest drape: flatter than that over its span it is a ripple.',
  },
  pointed: {
    weight: 0.3,
    why: 'Halves that meet at the crown in a right angle: a drape is round there, and a wreath of points is a star.',
  },
  narrow: {
    weight: 0.6,
    why: 'Swags of no width against the border they fill: narrower than it is deep, they are ripples.',
  },
  small: { weight: 1, why: 'Swags of no size against the foot: the needle turns at every inch.' },
  bareCorner: {
    weight: 0.4,
    why: 'A swag across the corner finishes a border; runs that end there leave its square bare.',
  },
  freeCorner: {
    weight: 0.6,
    why: 'Runs that stop beside the corner square leave all of it free, and something else is to be found for it.',
  },
  lean: {
    weight: 0.25,
    why: 'A template that leans by 45° from the seam is hard to set again the same way.',
  },
  crownFirst: {
    weight: 0.06,
    why: 'The heel is what a quilter lays at the start mark; crown first she works backwards.',
  },
  outside: {
    weight: 0.05,
    why: 'With the template outside the swag the foot runs where other stitching may lie.',
  },
  guideLine: { weight: 0.05, why: 'A guide line has to be drawn first.' },
  earlierEnd: {
    weight: 0.04,
    why: 'Each section that is left out at the crown, where the swag ends in a corner.',
  },
  etchedLine: { weight: 0.03, why: 'Square to the seam by an etched line is a second thing to look at.' },
  laterStart: { weight: 0.02, why: 'Each section that is left out at the heel.' },
  fewRound: {
    weight: 0.3,
    why: 'Each swag that a round frame has less than six: three make a triangle and four a square.',
  },
  manyRound: {
    weight: 0.1,
    why: 'Each swag that a round frame has more than eight: they are many to mark, and small.',
  },
  frameSize: {
    weight: 1,
    why: 'A round frame without a limit that is half as narrow, or twice as wide, as suits its motif: a string round it, or one that drowns it.',
  },
} as const satisfies Readonly<Record<string, Weight>>;

/**
 * A drape is wider than deep; outside these bounds of depth over span it looks like a ripple or ever more like a spike.
 * Flatter than `line`, one deep to twenty-five wide, an eye takes it for the line that it starts on (common practice, no
 * source): that is no swag, and none is laid unless it is asked for or nothing else is to be had (flat.ts).
 */
export const DRAPE = { line: 0.04, flattest: 0.12, steepest: 0.58, spike: 0.8 };

/** A difference of these shares in depth, and in span, is about where an eye sees it along a border. */
export const SEEN = { depth: 0.05, span: 0.1 };

/**
 * Swags this many clearances wide and deep, or less, are small against the foot: its own width, twice the clearance,
 * is then a quarter of the swag's.
 */
export const SMALL = { span: 8, depth: 2 };

/** How many swags look round, and how wide a frame without a limit suits its motif, in shares of the motif's radius. */
export const ROUND = { fewest: 6, most: 8, narrowest: 0.2, widest: 0.5 };
