/** Pages for a roll of paper: as wide as the roll, and as long as the drawing takes. */

import { ProblemError } from '../document/index.ts';
import { type Box, boxHeight, boxWidth } from '../geometry/index.ts';
import { formatLength, type LengthStyle, lengthsApart, MM_PER_INCH } from '../length/index.ts';
import { PAPERS, type Paper } from '../plan/index.ts';
import { CHECK_SIDE, leastLive } from './check-square.ts';
import type { Margins, Orientation } from './margins.ts';
import type { PerEdge } from './paper-edges.ts';

/** How wide a roll is, mm. */
export interface Roll {
  readonly roll: number;
}

/** A page of a roll, and how it and the drawing lie: its width is the roll's, whichever edge that makes the short one. */
export interface RollPage {
  readonly paper: Paper;
  readonly orientation: Orientation;
  readonly turns: readonly [boolean];
}

/**
 * PDF pages end at 14,400 units of 1/72 in, 200 in (ISO 32000-1, Annex C); larger ones open wrong or not at all. In mm,
 * each way.
 */
export const LONGEST_PAGE = 200 * MM_PER_INCH;
/** Narrower than this is a ribbon, and wider than this no printer takes, mm. */
const NARROWEST = 8 * MM_PER_INCH;
/** White between the drawing and a page's frame at the ends of the roll, mm: clear of the frame's ticks and numbers. */
const PAST_INK = 8;
/** A page that is just long enough may be a hair too short once it is divided, mm. */
const NOT_JUST = 1;

/**
 * The way to lay the drawing that takes the fewest pages, and then the least of the roll. Where the drawing is wider than the roll, pages lie
 * beside each other, and where it is longer than a page may be, one after another, all equally long.
 * Throws a ProblemError for a roll that no printer takes.
 */
export const rollPage = (
  ink: Box,
  { roll }: Roll,
  margins: Margins,
  overlap: number,
  measured: PerEdge,
  style: LengthStyle,
): RollPage => {
  if (!(roll >= NARROWEST && roll <= LONGEST_PAGE)) throw new ProblemError([rollProblem(roll, style)]);
  // What a printer prints too short needs longer paper in the file.
  const least = Math.min(1, measured.short, measured.long);
  const ways = [false, true].map((turned) => {
    const [across, along] = turned ? [boxHeight(ink), boxWidth(ink)] : [boxWidth(ink), boxHeight(ink)];
    const liveAcross = roll - margins.left - margins.right;
    const beside = pagesFor(across / least, liveAcross, overlap);
    const hasRoomBeside = liveAcross * least - across >= 2 * (CHECK_SIDE + PAST_INK);
    const needed =
      Math.max(
        along + 2 * PAST_INK + (hasRoomBeside ? 0 : CHECK_SIDE + PAST_INK),
        leastLive(overlap) + NOT_JUST,
        3 * overlap + NOT_JUST,
      ) / least;
    const white = margins.top + margins.bottom;
    const after = pagesFor(needed, LONGEST_PAGE - white, overlap);
    const length = Math.min(LONGEST_PAGE, white + overlap + (needed - overlap) / after);
    return { turned, length, pages: beside * after };
  });
  const { turned, length } = ways.reduce((a, b) => (isBetter(b, a) ? b : a));
  return {
    turns: [turned],
    orientation: roll <= length ? 'portrait' : 'landscape',
    paper: {
      id: 'roll',
      name: `roll ${formatLength(roll, style)} wide`,
      width: Math.min(roll, length),
      height: Math.max(roll, length),
      inTray: false,
    },
  };
};

/** Fewer joins first; then less of the roll. */
const isBetter = (a: { pages: number; length: number }, b: { pages: number; length: number }): boolean =>
  a.pages < b.pages || (a.pages === b.pages && a.length < b.length);

/** Windows of a given length, each of which lies over the one before, for so much of a drawing. */
const pagesFor = (length: number, window: number, overlap: number): number =>
  window <= overlap
    ? Number.POSITIVE_INFINITY
    : Math.max(1, Math.ceil((length - overlap) / (window - overlap) - 1e-9));

const rollProblem = (roll: number, style: LengthStyle) => {
  const limit = roll < NARROWEST ? NARROWEST : LONGEST_PAGE;
  return {
    code: 'no-such-roll',
    message: 'no roll of paper is so wide',
    found: Number.isFinite(roll) ? lengthsApart(roll, limit, style)[0] : String(roll),
    expected: `${formatLength(NARROWEST, style)} to ${formatLength(LONGEST_PAGE, style)}`,
  };
};

/** What a cover is printed on, which is read and not taped: nobody wants it on a roll. */
export const coverFor = (paper: Paper, isMetric: boolean): Paper =>
  paper.id === 'roll' ? PAPERS[isMetric ? 'a4' : 'letter'] : paper;
