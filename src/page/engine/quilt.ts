/** The whole quilt for the screen: where the open part lies on it, and the other parts round it. */

import { ProblemError } from '../../document/index.ts';
import {
  clothOf,
  clothSize,
  type Drawing,
  drawDesign,
  type LayerId,
  quiltPlaces,
  scopeOf,
  tearMessages,
} from '../../drawing/index.ts';
import { type Box, EMPTY_BOX, joinBoxes } from '../../geometry/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type Channel, type Design, type Placed, placedChannels } from '../../swag/index.ts';
import { takenIn } from '../plan/state.ts';
import { fitOfPart, readQuilt, uncoloured } from './desk.ts';
import type { Cloth, Input, Laid, OtherPart, Picture } from './messages.ts';
import { dataOf, pictureOf, placeOf } from './picture.ts';
import { findTemplate } from './profiles.ts';
import { troubleOf } from './trouble.ts';

export interface WholePicture {
  readonly picture: Picture;
  readonly cloth: Cloth;
  readonly laid: Laid | undefined;
  readonly channels: ReadonlyMap<Placed, readonly Channel[]>;
  /** Where the picture stands open though nothing does on the quilt, a sentence each. */
  readonly open: readonly string[];
}

/** Seams, stitching and channels: templates and marks are too fine for it, and fills come after it. */
const WITHOUT: readonly LayerId[] = ['fill', 'way', 'notes', 'marks'];

export const wholePicture = (design: Design, plan: Plan): WholePicture => {
  const whole = scopeOf(design, 'all');
  if (!whole.ok) throw new Error('A design without a whole');
  const channels = placedChannels(design, plan.channels, whole.scope.halves);
  const drawing = drawDesign(design, whole.scope, { title: plan.title, ghosts: false, channels });
  const picture = pictureOf(drawing, WITHOUT);
  const areas = clothOf(design, whole.scope);
  const cloth = {
    areas: areas.map(({ role, loop }) => ({ name: role, d: dataOf([loop]) })),
    size: clothSize(areas),
  };
  const open = tearMessages(whole.scope, plan.marks.style);
  return { picture, cloth, laid: laidOn(plan, drawing, picture.box), channels, open };
};

const laidOn = ({ part }: Plan, drawing: Drawing, box: Box): Laid | undefined => {
  if (!part) return undefined;
  const places = quiltPlaces({ part, drawing }).map(placeOf);
  return { places, box: places.map((place) => boxAt(box, place)).reduce(joinBoxes, EMPTY_BOX) };
};

/** A box that holds this one where an SVG matrix brings it. */
const boxAt = (
  { minX, minY, maxX, maxY }: Box,
  [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[],
): Box => {
  const corners = [minX, maxX].flatMap((x) =>
    [minY, maxY].map((y) => [a * x + c * y + e, b * x + d * y + f] as const),
  );
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
};

/** The parts that were worked out, by their names, each with what it was made from. */
const known = new Map<string, { readonly from: string; readonly part: OtherPart }>();

/** Each is worked out once, and again only when what it is made from is another. */
export const others = (input: Input): readonly OtherPart[] => {
  const { title, plans, open } = readQuilt(input);
  const names = plans.map(({ part }) => part?.name);
  for (const name of known.keys()) if (!names.includes(name)) known.delete(name);
  return plans.flatMap((plan) => {
    const name = plan.part?.name;
    if (plan === open || name === undefined) return [];
    const from = madeFrom(plan, input);
    const before = known.get(name);
    if (before?.from === from) return [before.part];
    const part = otherPart(name, plan, title, input);
    known.set(name, { from, part });
    return [part];
  });
};

const madeFrom = (plan: Plan, input: Input): string =>
  JSON.stringify([
    uncoloured(plan),
    plan.templates.map((name) => findTemplate(name, input.own)),
    takenIn({ ...input, part: plan.part?.name }),
  ]);

const otherPart = (name: string, plan: Plan, title: string, input: Input): OtherPart => {
  try {
    const { design } = fitOfPart(plan, title, input);
    const { picture, cloth, laid } = wholePicture(design, plan);
    return { name, drawn: laid && { ...laid, inks: picture.inks, cloth }, problems: [] };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { name, drawn: undefined, problems: error.problems.map(troubleOf) };
  }
};
