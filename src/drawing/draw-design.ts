/** A design as a picture: seams, stitching, the template's ghost, and the marks that go on the fabric. */

import {
  add,
  clipPathToRegion,
  compose,
  type Motion,
  move,
  movePath,
  type Path,
  type Point,
  pathBox,
  pathStart,
  polyline,
  subtract,
} from '../geometry/index.ts';
import {
  type Cell,
  type Channel,
  cellArea,
  centreMirror,
  type Design,
  type Placed,
  type PlacedSide,
  placedPath,
  placingOf,
  repeatMarks,
} from '../swag/index.ts';
import { ringCircles, ringMarkItems } from './draw-ring.ts';
import type { Drawing, Facts, Item, PathItem, TextItem } from './drawing.ts';
import type { Filled } from './filling.ts';
import { ghostItems } from './ghost.ts';
import type { Scope, Stretch } from './scope.ts';
import { INK, LABEL_SIZE, STROKES } from './style.ts';

export interface DrawOptions {
  readonly title: string;
  /** Size of labels, mm. */
  readonly labelSize?: number;
  /** The channels of each cell, or of each half where they are known so closely. */
  readonly channels?: ReadonlyMap<Cell | Placed, readonly Channel[]>;
  /** For each half what fills its whole repeat. */
  readonly fills?: ReadonlyMap<Placed, readonly Filled[]>;
  /** Whether each half shows the template that makes it. */
  readonly ghosts?: boolean;
}

export const drawDesign = (design: Design, scope: Scope, options: DrawOptions): Drawing => {
  const size = options.labelSize ?? LABEL_SIZE;
  const { ring } = design;
  return {
    title: options.title,
    layers: {
      fill: scope.halves.flatMap((h) => fillItems(design, scope, h, options.fills?.get(h) ?? [])),
      border: [
        ...scope.stretches.flatMap((s) => seamItems(design, s)),
        ...(ring ? ringCircles(design, ring, scope.halves) : []),
      ],
      template: options.ghosts === false ? [] : ghosts(scope),
      channel: scope.halves.flatMap((h) =>
        channelItems(h, options.channels?.get(h) ?? options.channels?.get(h.cell) ?? []),
      ),
      stitch: scope.halves.map(stitchItem),
      marks: [
        ...scope.stretches.flatMap((s) => markItems(design, s, size)),
        ...cornerMarks(design, scope, size, options.channels),
        ...(ring ? ringMarkItems(design, ring, scope.halves, size) : []),
      ],
      notes: scope.stretches.flatMap((s) => sideNotes(design, s, size)),
    },
  };
};

const factsOf = (half: Placed): Facts => ({ repeat: half.repeat, half: half.half });

const stitchItem = (half: Placed): PathItem => ({
  kind: 'path',
  path: placedPath(half),
  stroke: STROKES.stitch,
  facts: factsOf(half),
});

const channelItems = (half: Placed, channels: readonly Channel[]): readonly PathItem[] =>
  channels.flatMap((channel) =>
    channel.paths.map((path) => ({
      kind: 'path',
      path: movePath(path, half.motion),
      stroke: STROKES.channel,
      facts: { ...factsOf(half), channel: `${channel.side} ${channel.number}` },
    })),
  );

/**
 * A fill belongs to a whole repeat: it is drawn with the first half, and where only one half of a repeat is
 * shown, as at the ends of a side, the half of it that lies there.
 */
const fillItems = (
  design: Design,
  scope: Scope,
  half: Placed,
  filled: readonly Filled[],
): readonly PathItem[] => {
  const isWhole = scope.halves.some((h) => h.repeat === half.repeat && h.half !== half.half);
  if (isWhole && half.half === 'second') return [];
  const over = centreMirror(half.cell);
  const shown = (path: Path): readonly Path[] => {
    if (isWhole) return [path];
    const own = half.half === 'first' ? path : movePath(path, over);
    return clipPathToRegion(own, cellArea(half.cell, design));
  };
  return filled.flatMap((f) =>
    f.paths.flatMap(shown).map((path) => ({
      kind: 'path',
      path: movePath(path, half.motion),
      stroke: STROKES.fill,
      facts: { repeat: half.repeat, region: f.region.name, fill: f.fill },
    })),
  );
};

/** The etched lines are drawn once, on the first half that is shown: everywhere else the edge is enough. */
const ghosts = (scope: Scope): readonly Item[] =>
  scope.halves.flatMap((half, i) => {
    const motion = compose(half.motion, half.cell.motion);
    return ghostItems(half.cell.seat.shape.stitching.template, motion, factsOf(half), i === 0);
  });

/** The two seams, the margins and, at a corner, the mitre, along the stretch that is shown. */
const seamItems = (design: Design, { side, from, to }: Stretch): readonly Item[] => {
  const { field } = design;
  const length = side.run.length + (side.tear?.by ?? 0);
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  // Seams meet their neighbours' on the mitres: each mm out from the start line is a mm longer at each end.
  const lean = field.corners === 'none' ? 0 : field.from === 'outer' ? -1 : 1;
  const startCorner = field.corners === 'open' ? 0 : undefined;
  const endsAt = (y: number): number => {
    if (lean === 0) return 0;
    if (startCorner === undefined) return lean * y;
    // The runs of open corners stop beside the inner corner: the outer seam reaches one width over.
    const isInner = (field.from === 'inner') === (y === near);
    return isInner ? 0 : field.width;
  };
  const level = (y: number, stroke: PathItem['stroke'], kind: string): Item => {
    const over = endsAt(y);
    const a = from <= 0 ? -over : from;
    const b = to >= length ? length + over : to;
    return {
      kind: 'path',
      path: movePath(
        polyline([
          { x: a, y },
          { x: b, y },
        ]),
        side.motion,
      ),
      stroke,
      facts: { side: side.run.name, line: kind },
    };
  };
  const items = [level(near, STROKES.seam, `${field.from} seam`), level(far, STROKES.seam, 'far seam')];
  if (field.startMargin > 0) items.push(level(0, STROKES.margin, 'start line'));
  if (field.farMargin > 0) items.push(level(far - field.farMargin, STROKES.margin, 'margin'));
  if (field.corners === 'turn' || field.corners === 'meet') {
    const mitre = (x: number, sense: number): Item => ({
      kind: 'path',
      path: movePath(
        polyline([
          { x: x - sense * lean * near, y: near },
          { x: x - sense * lean * far, y: far },
        ]),
        side.motion,
      ),
      stroke: STROKES.mitre,
      facts: { side: side.run.name, line: 'mitre' },
    });
    // Each mitre is drawn with the side that ends there; a corner's own picture shows both sides.
    if (to >= length) items.push(mitre(length, -1));
  }
  return items;
};

/** Half the length of a start or stop mark, mm. */
const TICK = 5;
/** Words beside a tick, as a share of the labels' size. */
const SMALL_LABEL = 0.75;

const markItems = (design: Design, { side, repeats }: Stretch, size: number): readonly Item[] => {
  const { field } = design;
  const near = -field.startMargin;
  const far = field.width - field.startMargin;
  const items: Item[] = [];
  const upright = (x: number, y0: number, y1: number, stroke: PathItem['stroke'], facts: Facts): void => {
    items.push({
      kind: 'path',
      path: movePath(
        polyline([
          { x, y: y0 },
          { x, y: y1 },
        ]),
        side.motion,
      ),
      stroke,
      facts,
    });
  };
  for (const index of repeats) {
    const { start, centre, stop } = repeatMarks(side, index);
    const repeat = `${side.run.name} ${index + 1}`;
    upright(start, near - TICK, near + TICK, STROKES.startMark, { repeat, mark: 'start' });
    upright(stop, near - TICK, near + TICK, STROKES.startMark, { repeat, mark: 'stop' });
    upright(centre, near - TICK, far + TICK, STROKES.centreLine, { repeat, mark: 'centre' });
    const below = near - TICK - 1.4 * size;
    items.push(label(side.motion, { x: centre, y: below }, repeat, size, INK.mark, true));
    // Each beside its own tick, so that where neighbours meet it reads “stop | start”.
    const small = SMALL_LABEL * size;
    items.push(
      label(side.motion, { x: start + SMALL_LABEL * 2.2 * size, y: below }, 'start', small, INK.mark, false),
    );
    items.push(
      label(side.motion, { x: stop - SMALL_LABEL * 2.2 * size, y: below }, 'stop', small, INK.mark, false),
    );
  }
  items.push(...guideItems(side, repeats));
  return items;
};

/** The line along which a flat of the template is laid, where that is how the template is set. */
const guideItems = (side: PlacedSide, repeats: readonly number[]): readonly Item[] => {
  const height = placingOf(side.cell).guide;
  if (height === undefined) return [];
  return repeats.map((index) => {
    const { start, stop } = repeatMarks(side, index);
    return {
      kind: 'path',
      path: movePath(
        polyline([
          { x: start, y: height },
          { x: stop, y: height },
        ]),
        side.motion,
      ),
      stroke: STROKES.guideLine,
      facts: { repeat: `${side.run.name} ${index + 1}`, mark: 'guide' },
    };
  });
};

const cornerMarks = (
  design: Design,
  scope: Scope,
  size: number,
  channels: DrawOptions['channels'],
): readonly Item[] => {
  const corner = design.corner;
  if (!corner) return [];
  const shown = scope.halves.find((h) => h.cell === corner.cell);
  const ofCorner = (shown && channels?.get(shown)) ?? channels?.get(corner.cell) ?? [];
  const outward = ofCorner.filter((c) => c.side === 'outward');
  const outwardReach = Math.max(0, ...outward.map((c) => c.distance));
  return scope.halves
    .filter((h) => h.cell === corner.cell)
    .flatMap((h): readonly Item[] => {
      const near = -design.field.startMargin;
      const tick = polyline([
        { x: 0, y: near - TICK },
        { x: 0, y: near + TICK },
      ]);
      const facts = { repeat: h.repeat, mark: h.half === 'first' ? 'start' : 'stop' };
      const items: Item[] = [
        { kind: 'path', path: movePath(tick, h.motion), stroke: STROKES.startMark, facts },
      ];
      if (h.half === 'first') {
        // The corner's name stands where its crown is, just beyond it on the mitre.
        const crown = move(h.motion, corner.cell.crown);
        const start = move(h.motion, { x: corner.cell.crown.x, y: 0 });
        const outward = subtract(crown, start);
        const length = Math.hypot(outward.x, outward.y) || 1;
        const away = outwardReach + 2.5 * size;
        const at = add(crown, { x: (outward.x / length) * away, y: (outward.y / length) * away });
        items.push({ ...text(at, h.repeat.slice('corner '.length), size, INK.mark), bold: true });
      }
      return items;
    });
};

const sideNotes = (design: Design, { side, from, to }: Stretch, size: number): readonly Item[] => {
  const far = design.field.width - design.field.startMargin;
  const notes: Item[] = [];
  if (side.run.name !== 'strip') {
    const at = { x: (Math.max(0, from) + to) / 2, y: far + TICK + 1.2 * size };
    notes.push(label(side.motion, at, side.run.name, 1.4 * size, INK.note, false));
  }
  if (side.tear && side.tear.after < side.fit.repeats && from <= 0 && to >= side.run.length) {
    const { stop } = repeatMarks(side, side.tear.after - 1);
    const at = { x: stop + side.tear.by / 2, y: far + TICK + 3.2 * size };
    notes.push(
      label(
        side.motion,
        at,
        'drawn open here: this side is shorter than the one opposite',
        size,
        INK.note,
        false,
      ),
    );
  }
  return notes;
};

/** A label that stands upright for a reader whose seam is at the bottom, and never on its head. */
const label = (
  motion: Motion,
  at: Point,
  words: string,
  size: number,
  color: string,
  bold: boolean,
): TextItem => {
  const place = move(motion, at);
  const along = subtract(move(motion, { x: at.x + 1, y: at.y }), place);
  let angle = Math.atan2(along.y, along.x);
  if (Math.abs(angle) > Math.PI / 2 + 1e-9) angle -= Math.sign(angle) * Math.PI;
  return { ...text(place, words, size, color), angle, ...(bold ? { bold } : {}) };
};

const text = (at: Point, words: string, size: number, color: string): TextItem => ({
  kind: 'text',
  text: words,
  at,
  size,
  align: 'middle',
  angle: 0,
  color,
});

/** The start mark and the crown of a placed half, on the quilt: for checks and for cards. */
export const halfEnds = (half: Placed): { readonly start: Point; readonly crown: Point } => {
  const path = placedPath(half);
  const box = pathBox(path);
  const start = pathStart(path) ?? { x: box.minX, y: box.minY };
  return { start, crown: move(half.motion, half.cell.crown) };
};
