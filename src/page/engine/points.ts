/** Points that were measured off a mat become a template: the curve for the screen, and what is made of it. */

import {
  distance,
  flatten,
  type Path,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
} from '../../geometry/index.ts';
import { templateFromPoints } from '../../jobs/points-template.ts';
import { breaksShown, SCREEN } from './edge-shown.ts';
import type { EdgeShown, PointsAnswer, PointsInput, ShelfCard } from './messages.ts';
import { cardOf } from './shelf.ts';
import { troubleOf } from './trouble.ts';

const NAME = './points.yaml';

/** The page draws y down. */
const over = ({ x, y }: Point): Point => ({ x, y: -y });
const placed = (at: number | Point): number | Point => (typeof at === 'number' ? at : over(at));

export const points = ({ text, units, breaks, thickness, across, along }: PointsInput): PointsAnswer => {
  const made = templateFromPoints({
    fileName: NAME,
    units,
    text,
    said: {
      breaks: breaks?.map(({ at, name }) => ({ at: over(at), name })),
      thickness,
      across: across.map(({ name, at }) => ({ name, at: placed(at) })),
      along: along.map(placed),
    },
  });
  if (!made.ok)
    return {
      card: refused(made.problems.map(troubleOf)),
      outline: made.edge && shownOf(made.edge),
      template: undefined,
    };
  const template = { name: NAME, text: made.text };
  const card = cardOf(NAME, template, units);
  const { edge } = made.template;
  const outline = {
    ...shownOf(edge),
    breaks: breaksShown(made.template, over),
    // The card's own picture has them.
    across: made.across.map((at) => ({ at, points: [] })),
    along: made.along.map((at) => ({ at, points: [] })),
  };
  return { card, outline, template: card.picture && template };
};

const refused = (problems: ShelfCard['problems']): ShelfCard => ({
  name: NAME,
  title: '',
  picture: undefined,
  about: '',
  problems,
});

const shownOf = (edge: Path): EdgeShown => {
  const [heel, crown] = [pathStart(edge), pathEnd(edge)];
  return {
    pixelsPerMm: 1,
    edge: flatten(edge, SCREEN).map(over),
    breaks: [],
    across: [],
    along: [],
    edgeLength: pathLength(edge),
    chord: heel && crown ? distance(heel, crown) : 0,
  };
};
