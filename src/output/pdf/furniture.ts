/**
 * What is on every sheet besides the drawing: the frame that is a ruler, bands and trim lines, registration
 * crosses, neighbours' labels. Positions come from the plan; here they only get a look.
 */

import type { Point } from '../../geometry/index.ts';
import {
  edgesOf,
  type Orientation,
  type Rule,
  type SharedEdge,
  type Sheet,
  type SheetPlan,
} from '../../pagination/index.ts';
import type { Pdf } from './document.ts';
import { CROSS, CUT, FRAME, INK, MATCH, SQUARE, TICK } from './look.ts';
import type { Correction, Form, PageContent } from './page-content.ts';

/** Half the length of a cross's arms and the radius of its ring, mm: both inside half of the least band. */
const CROSS_ARM = 2.8;
const CROSS_RING = 1.5;
/** The same of a cross that is stitched over: as small as one can still be laid on another. */
const BARE_ARM = 1.5;

/** Numbers at the ticks: small, and a little away from them. */
const NUMBER_SIZE = 1.9;
const NUMBER_GAP = 0.5;

const NEIGHBOUR_SIZE = 3;

export interface Furniture {
  /** The frame with its ticks and numbers; put at the page's origin. */
  readonly frame: Form;
  readonly cross: Form;
  /** The bare check square with its ticks; put at its lower left corner. */
  readonly square: Form;
}

export const makeFurniture = (pdf: Pdf, plan: SheetPlan, correction: Correction): Furniture => {
  const { live } = plan;
  const whole = { minX: -1, minY: -1, maxX: live.maxX - live.minX + 1, maxY: live.maxY - live.minY + 1 };
  const frame = pdf.form(
    whole,
    (content) =>
      content.placed({ flip: false, angle: 0, x: -live.minX, y: -live.minY }, () => drawFrame(content, plan)),
    correction,
  );
  const arm = CROSS_ARM + CROSS.width;
  const cross = pdf.form({ minX: -arm, minY: -arm, maxX: arm, maxY: arm }, drawCross, correction);
  return { frame, cross, square: makeSquare(pdf, plan, plan.orientation, correction) };
};

/** The bare check square with its ticks, for a page that is held this way. */
export const makeSquare = (
  pdf: Pdf,
  { check: { side, second } }: Pick<SheetPlan, 'check'>,
  orientation: Orientation,
  correction: Correction,
): Form =>
  pdf.form(
    { minX: -1, minY: -1, maxX: side + 1, maxY: side + 1 },
    (content) => drawSquare(content, side, second, edgesOf(orientation)),
    correction,
  );

/** Crosses alone, without a ring, for sheets that are stitched through. */
export const makeBareCross = (pdf: Pdf, correction: Correction): Form => {
  const arm = BARE_ARM + CROSS.width;
  const box = { minX: -arm, minY: -arm, maxX: arm, maxY: arm };
  return pdf.form(box, (content) => content.lines(armsOf(BARE_ARM), CROSS), correction);
};

const armsOf = (arm: number): readonly { readonly from: Point; readonly to: Point }[] => [
  { from: { x: -arm, y: 0 }, to: { x: arm, y: 0 } },
  { from: { x: 0, y: -arm }, to: { x: 0, y: arm } },
];

const drawFrame = (content: PageContent, plan: SheetPlan): void => {
  content.box(plan.live, { stroke: FRAME });
  for (const rule of plan.rules) drawRule(content, rule);
};

export const drawRule = (content: PageContent, rule: Rule): void => {
  const on = (along: number, inward: number): Point => ({
    x: rule.zero.x + along * rule.along.x + inward * rule.inward.x,
    y: rule.zero.y + along * rule.along.y + inward * rule.inward.y,
  });
  content.lines(
    rule.ticks.map((tick) => ({ from: on(tick.at, 0), to: on(tick.at, tick.length) })),
    TICK,
  );
  const level = rule.along.x !== 0;
  for (const tick of rule.ticks) {
    if (tick.label === undefined) continue;
    // Numbers stand beside their ticks, before them in the direction of counting, and upright to the reader.
    const cap = 0.73 * NUMBER_SIZE;
    const base = level ? (rule.inward.y > 0 ? tick.length - cap : tick.length) : tick.length;
    const at = level
      ? on(tick.at - NUMBER_GAP, base)
      : on(tick.at - NUMBER_GAP, rule.inward.x > 0 ? tick.length : tick.length - cap);
    content.text({
      text: tick.label,
      at,
      size: NUMBER_SIZE,
      color: INK.quiet,
      align: 'end',
      angle: level ? 0 : Math.PI / 2,
    });
  }
};

const drawCross = (content: PageContent): void => {
  content.lines(armsOf(CROSS_ARM), CROSS);
  const ring = { x: CROSS_RING, y: 0 };
  content.path(
    {
      closed: true,
      pieces: [
        {
          kind: 'arc',
          center: { x: 0, y: 0 },
          radius: CROSS_RING,
          start: 0,
          sweep: 2 * Math.PI,
          from: ring,
          to: ring,
        },
      ],
    },
    CROSS,
  );
};

/** The ticks of the second measure reach in this far, mm. */
const SECOND_TICK = 2;

const drawSquare = (
  content: PageContent,
  side: number,
  second: number,
  edges: ReturnType<typeof edgesOf>,
): void => {
  content.box({ minX: 0, minY: 0, maxX: side, maxY: side }, { stroke: SQUARE });
  content.lines(
    [
      { from: { x: second, y: 0 }, to: { x: second, y: SECOND_TICK } },
      { from: { x: 0, y: second }, to: { x: SECOND_TICK, y: second } },
    ],
    SQUARE,
  );
  // Small, in the square's rim: its side at the top, the ticks' measure beside the ticks, and which edge of the paper
  // each side runs along, so that nobody has to say which way she holds a landscape sheet.
  const name = { size: NUMBER_SIZE, color: INK.quiet, align: 'end' } as const;
  const off = 0.8;
  const cap = 0.73 * NUMBER_SIZE;
  content.text({ ...name, text: `${second} mm`, at: { x: second - off, y: off } });
  content.text({ ...name, text: `${second} mm`, at: { x: off + cap, y: second - off }, angle: Math.PI / 2 });
  content.text({ ...name, text: '2 in', at: { x: side - off, y: side - off - cap } });
  const which = { ...name, align: 'start', color: INK.text } as const;
  content.text({ ...which, text: `◂ ${edges.x} edge of the paper ▸`, at: { x: 3, y: side - 0.5 - cap } });
  content.text({
    ...which,
    text: `◂ ${edges.y} edge of the paper ▸`,
    at: { x: off + cap, y: off },
    angle: Math.PI / 2,
  });
};

/** Bands first, under the drawing. */
export const drawBands = (content: PageContent, sheet: Sheet): void => {
  for (const edge of sheet.edges) content.box(edge.outer, { fill: INK.tint });
};

/** Trim lines, crosses and labels, over the drawing. */
export const drawEdges = (content: PageContent, sheet: Sheet, furniture: Furniture): void => {
  for (const edge of sheet.edges) {
    content.lines([edge.trim], edge.cut ? CUT : MATCH);
    for (const cross of edge.crosses) content.form(furniture.cross, cross.paper);
    drawNeighbour(content, edge);
  }
};

const ARROWS = { left: '◂', right: '▸', top: '▴', bottom: '▾' } as const;

const drawNeighbour = (content: PageContent, edge: SharedEdge): void => {
  const arrow = ARROWS[edge.side];
  const text = edge.side === 'left' ? `${arrow} ${edge.neighbour}` : `${edge.neighbour} ${arrow}`;
  const level = edge.side === 'top' || edge.side === 'bottom';
  const angle = level ? 0 : Math.PI / 2;
  const down = 0.36 * NEIGHBOUR_SIZE;
  // Past the ticks and numbers of the frame, which take the band's outer 3 mm.
  const inward = 0.9;
  const at = {
    x:
      edge.labelAt.x +
      (edge.side === 'left' ? inward : edge.side === 'right' ? -inward : 0) +
      (level ? 0 : down),
    y:
      edge.labelAt.y +
      (edge.side === 'bottom' ? inward : edge.side === 'top' ? -inward : 0) -
      (level ? down : 0),
  };
  content.text({
    text: level ? text : edge.neighbour,
    at,
    size: NEIGHBOUR_SIZE,
    color: INK.text,
    align: 'middle',
    angle,
    bold: true,
    halo: 0.4,
  });
};
