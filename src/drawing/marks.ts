/** The marks that go on the fabric, with their names: start, centre and stop of each swag, guide lines, corners. */

import {
  add,
  compose,
  type Motion,
  move,
  movePath,
  ORIGIN,
  polyline,
  shift,
  subtract,
  turn,
} from '../geometry/index.ts';
import {
  type Channel,
  cellAt,
  cornerSwag,
  type Design,
  frameAt,
  halvesAt,
  leavesSquare,
  type Placed,
  type PlacedSide,
  placingOf,
  type Run,
  repeatMarks,
  repeatMotions,
} from '../swag/index.ts';
import type { Facts, Item } from './drawing.ts';
import { label, labelLines, roughTextWidth, text } from './label.ts';
import type { LineRole } from './role.ts';
import type { Stretch } from './scope.ts';
import { showsTear } from './tear.ts';

/** Half the length of a start or stop mark, mm. */
export const TICK = 5;
/** Words beside a tick, as a share of the labels' size. */
const SMALL_LABEL = 0.75;

/** Where the lines across a run and the words beside them lie: levels and distances along it, mm. */
interface MarkLook {
  /** Which way levels lead away from the centre that the run is bent about; 1 on a straight one. */
  readonly out: 1 | -1;
  readonly centre: readonly [from: number, to: number];
  /** From the centre to a start or stop mark. */
  readonly ray: readonly [from: number, to: number] | undefined;
  /** Of a repeat's name, and of `start` and `stop`, which stand so far inside their swag, where there is room. */
  readonly name: number;
  readonly words: { readonly level: number; readonly aside: number } | undefined;
  /** Whether words are middled on their level, and do not stand on it. */
  readonly middled: boolean;
  /** Where along the run the middle of words so wide (mm) stands on a level: where it is wanted, or off the next side's. */
  readonly keptAt: (wanted: number, width: number, level: number) => number;
}

/** Sizes of a label that `start`, a repeat's name and `stop` need beside one another. */
const ROOM_FOR_WORDS = 12;

/** Where the words beside the marks of a side stand: on the near side of the seam, clear of the ticks. */
const wordsAt = (near: number, size: number): number => near - TICK - 1.4 * size;

/** Sizes of a label between words that stand in one line, and between those of two sides at their corner. */
const APART = 0.3;
/** From a line of words to what stands on a line of its own under it, sizes. */
const NEXT_LINE = 1.6;
/** How far (sizes) letters reach over and under their base line. */
const LETTERS = { over: 0.75, under: 0.2 };

/**
 * The words of two sides that meet stand in two lines that cross before the corner. So each side's keep to their own side
 * of the mitre, on which both lines are as far from the corner.
 */
const keptOffMitre = ({ field }: Design, { drawn }: Run, size: number): MarkLook['keptAt'] => {
  if (field.corners === 'none') return (wanted) => wanted;
  const near = -field.startMargin;
  // Runs that leave the corner square free end beside the inner corner.
  const cornerAt = leavesSquare(field) ? (field.from === 'inner' ? near : near + field.width) : field.marksAt;
  const overAt = (l: number): number => (l - cornerAt) / Math.tan(field.mitre);
  return (wanted, width, level) => {
    const over = Math.min(overAt(level - LETTERS.under * size), overAt(level + LETTERS.over * size));
    const end = over - (APART * size + width) / 2;
    return Math.max(-end, Math.min(drawn + end, wanted));
  };
};

/** Along a seam the words of all marks stand in one line, and centre lines end at the far seam: beyond it an end of a line could cost a sheet of its own. */
const straightLook = (design: Design, run: Run, span: number, size: number): MarkLook => {
  const { field } = design;
  const { from, to } = field.across;
  const below = wordsAt(from, size);
  // Each beside its own tick, so that where neighbours meet it reads “stop | start”. Narrow swags have room for their own name only.
  const words = span < ROOM_FOR_WORDS * size ? undefined : { level: below, aside: SMALL_LABEL * 2.2 * size };
  const keptAt = keptOffMitre(design, run, size);
  return { out: 1, centre: [from - TICK, to], ray: undefined, name: below, words, middled: false, keptAt };
};

/** Start and stop are named where their swag is this many times wider than a letter is high. */
const ROOM_FOR_NAMES = 9;

/** Round a centre every mark has its ray; repeats are named beyond all stitching, start and stop where swags turn their backs. */
const bentLook = ({ field }: Design, curvature: number, span: number, size: number): MarkLook => {
  const out = curvature < 0 ? 1 : -1;
  const small = SMALL_LABEL * size;
  const radius = 1 / Math.abs(curvature);
  const end = field.across.to + out * TICK;
  const level =
    field.from === 'inner' ? Math.min(0, field.near) - TICK - 0.6 * small : end + out * 0.7 * small;
  const away = radius + out * level;
  const words =
    span > ROOM_FOR_NAMES * small && away >= size
      ? { level, aside: (1.7 * small * radius) / away }
      : undefined;
  const { from } = field.across;
  return {
    out,
    centre: [from, end],
    ray: [from, -out * TICK],
    name: end + out * 1.1 * size,
    words,
    middled: true,
    keptAt: (wanted) => wanted,
  };
};

/** Start, stop and centre marks of the repeats on a stretch, with their names. */
export const markItems = (
  design: Design,
  { side, repeats }: Stretch,
  size: number,
  half: number,
): readonly Item[] => {
  const { run } = side;
  const near = -design.field.startMargin;
  const items: Item[] = [];
  for (const index of repeats) {
    const { start, centre, stop } = repeatMarks(side, index);
    const cell = cellAt(side, index);
    const look =
      run.curvature === 0
        ? straightLook(design, run, stop - start, size)
        : bentLook(design, run.curvature, cell.seat.span, size);
    const { out } = look;
    const repeat = `${run.name} ${index + 1}`;
    const across = (x: number, [from, to]: readonly [number, number], role: LineRole, mark: string): void => {
      const path = polyline([
        { x: 0, y: from },
        { x: 0, y: to },
      ]);
      const facts: Facts = { repeat, mark };
      items.push({ kind: 'path', path: movePath(path, frameAt(run, x)), role, facts });
    };
    const write = (x: number, level: number, words: string, height: number, bold: boolean): void => {
      const place = compose(frameAt(run, x), shift(0, level));
      const upright = out > 0 ? place : compose(place, turn(Math.PI));
      items.push(label(upright, ORIGIN, words, height, 'label', bold, look.middled));
    };
    const tick = [near - out * half, near + out * half] as const;
    const halves = halvesAt(side, index);
    const [starts, stops] = [halves.includes('first'), halves.includes('second')];
    if (starts) across(start, tick, 'startMark', 'start');
    if (stops) across(stop, tick, 'stopMark', 'stop');
    across(centre, look.centre, 'centreLine', 'centre');
    if (look.ray) for (const x of [start, stop]) across(x, look.ray, 'ray', 'ray');
    const name = side.cells.length > 1 ? `${repeat}, kind ${cell.kind}` : repeat;
    const width = roughTextWidth(name, size);
    const nameAt = look.keptAt(centre, width, look.name);
    // Half a swag whose name was moved so far from its corner that it would stand beside the next one has it a line lower.
    const isAstray = nameAt !== centre && Math.abs(nameAt - centre) + width / 2 > (stop - start) / 2;
    const nameLevel = look.name - (isAstray ? NEXT_LINE * size : 0);
    write(look.keptAt(centre, width, nameLevel), nameLevel, name, size, true);
    if (!look.words) continue;
    const { level, aside } = look.words;
    const writeBeside = (wanted: number, words: string): void => {
      const small = SMALL_LABEL * size;
      const ownWidth = roughTextWidth(words, small);
      const x = look.keptAt(wanted, ownWidth, level);
      const isClear = Math.abs(x - nameAt) >= (ownWidth + width) / 2 + APART * size;
      if (level !== nameLevel || isClear) write(x, level, words, small, false);
    };
    if (starts) writeBeside(start + aside, 'start');
    if (stops) writeBeside(stop - aside, 'stop');
  }
  items.push(...guideItems(side, repeats));
  return items;
};

/** The line along which a flat of the template is laid, where that is how the template is set: square to each join. */
const guideItems = (side: PlacedSide, repeats: readonly number[]): readonly Item[] => {
  const { run } = side;
  return repeats.flatMap((index): readonly Item[] => {
    const cell = cellAt(side, index);
    const { guide } = placingOf(cell);
    if (guide === undefined) return [];
    const [first, second] = repeatMotions(side, index);
    const line = (length: number, motion: Motion): Item => ({
      kind: 'path',
      path: movePath(
        polyline([
          { x: 0, y: guide },
          { x: length, y: guide },
        ]),
        motion,
      ),
      role: 'guideLine',
      facts: { repeat: `${run.name} ${index + 1}`, mark: 'guide' },
    });
    const halves = halvesAt(side, index);
    if (halves.length === 1) return [line(cell.crown.x, halves[0] === 'first' ? first : second)];
    // Between parallel joins the lines of the two halves are one.
    if (run.curvature === 0) return [line(2 * cell.crown.x, first)];
    return [line(cell.crown.x, first), line(cell.crown.x, second)];
  });
};

/**
 * Of a row on the marks of another: where its swags start on a line of its own, and its guide lines. All else is marked
 * with the first row.
 */
export const furtherMarks = (row: Design, { side, repeats }: Stretch, half: number): readonly Item[] => {
  if (row.field.marksAt === 0) return guideItems(side, repeats);
  const tick = polyline([
    { x: 0, y: -half },
    { x: 0, y: half },
  ]);
  return [
    ...repeats.flatMap((index): readonly Item[] => {
      const { start, stop } = repeatMarks(side, index);
      const facts = { repeat: `${side.run.name} ${index + 1}`, row: String(row.row) };
      const at = (x: number, role: LineRole, mark: string): Item => ({
        kind: 'path',
        path: movePath(tick, frameAt(side.run, x)),
        role,
        facts: { ...facts, mark },
      });
      const halves = halvesAt(side, index);
      return [
        ...(halves.includes('first') ? [at(start, 'startMark', 'start')] : []),
        ...(halves.includes('second') ? [at(stop, 'stopMark', 'stop')] : []),
      ];
    }),
    ...guideItems(side, repeats),
  ];
};

/** The start and stop marks of a row's corner swags; with those of the last row the corner's name beyond its crown. */
export const cornerMarks = (
  design: Design,
  halves: readonly Placed[],
  size: number,
  half: number,
  channelsOf: (half: Placed) => readonly Channel[],
): readonly Item[] => {
  const corner = cornerSwag(design);
  const shown = halves.find((h) => h.cell === corner?.cell);
  if (!corner || !shown) return [];
  const outward = channelsOf(shown).filter((c) => c.side === 'outward');
  const outwardReach = Math.max(0, ...outward.map((c) => c.distance));
  // The first row's are drawn across the seam, another's across its own start line.
  const near = design.row === 1 ? -design.field.startMargin : 0;
  const isMarked = design.row === 1 || design.field.marksAt !== 0;
  return halves
    .filter((h) => h.cell === corner.cell)
    .flatMap((h): readonly Item[] => {
      const tick = movePath(
        polyline([
          { x: 0, y: near - half },
          { x: 0, y: near + half },
        ]),
        turn(-corner.turned),
      );
      const row = design.row === 1 ? {} : { row: String(design.row) };
      const facts = { repeat: h.repeat, mark: h.half === 'first' ? 'start' : 'stop', ...row };
      const items: Item[] = [];
      if (isMarked)
        items.push({
          kind: 'path',
          path: movePath(tick, h.motion),
          role: h.half === 'first' ? 'startMark' : 'stopMark',
          facts,
        });
      if (h.half === 'first' && corner.kind === 'across') items.push(...chordItems(h));
      if (h.half === 'first' && !design.beyond) {
        // The corner's name stands where its crown is, just beyond it on the mitre.
        const crown = move(h.motion, corner.cell.crown);
        const start = move(h.motion, { x: corner.cell.crown.x, y: 0 });
        const outward = subtract(crown, start);
        const length = Math.hypot(outward.x, outward.y) || 1;
        const away = outwardReach + 2.5 * size;
        const at = add(crown, { x: (outward.x / length) * away, y: (outward.y / length) * away });
        items.push({ ...text(at, h.repeat.slice('corner '.length), size, 'label'), bold: true });
      }
      return items;
    });
};

/** Across a corner the swag stands on a line from start to stop mark, and its template's guide line lies along that. */
const chordItems = ({ cell, motion, repeat }: Placed): readonly Item[] => {
  const { guide } = placingOf(cell);
  return [0, ...(guide === undefined ? [] : [guide])].map((y): Item => {
    const path = polyline([
      { x: 0, y },
      { x: 2 * cell.crown.x, y },
    ]);
    const mark = y === 0 ? 'chord' : 'guide';
    return { kind: 'path', path: movePath(path, motion), role: 'guideLine', facts: { repeat, mark } };
  });
};

/** Four square corners do not close round sides that differ: the drawing shows where it stands open for that. */
const TEAR_WORDS = ['open only in the drawing:', 'sew without this gap'] as const;
/** Sizes of a label from a start mark to the middle of these words in one line, clear of `start`. */
const TEAR_WORDS_FROM = 12.5;
/** Sizes of a label that half a swag needs for `start`, these words in one line, and half of the repeat's name. */
const ROOM_FOR_TEAR_WORDS = 26;

/**
 * Where a side is drawn open. A side’s own name needs no note, since each repeat carries it; and these words stand
 * among those of the marks, where a sheet is printed in any case. Only beside narrow swags they go one line farther in.
 */
export const tearNotes = (design: Design, stretch: Stretch, size: number): readonly Item[] => {
  const { side } = stretch;
  const { place } = side.run;
  const { tear } = side;
  if (!tear || !showsTear(stretch)) return [];
  const { start, centre } = repeatMarks(side, tear.after);
  const y = wordsAt(-design.field.startMargin, size);
  const small = SMALL_LABEL * size;
  if (centre - start > ROOM_FOR_TEAR_WORDS * size) {
    const at = { x: start + TEAR_WORDS_FROM * size, y };
    return [label(place, at, TEAR_WORDS.join(' '), small, 'note', false)];
  }
  const at = { x: start - tear.by / 2, y: y - NEXT_LINE * size };
  return labelLines(place, at, TEAR_WORDS, small, 'note');
};
