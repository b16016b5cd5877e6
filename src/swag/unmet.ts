/** Where nothing meets all that is asked: what comes nearest, and which two things cannot both be had. */

import { type Problem, series } from '../document/index.ts';
import { formatLength, type LengthStyle } from '../length/index.ts';
import { type CountWish, closesRound, hasCorners, layoutKey, type Plan } from '../plan/index.ts';
import { type Answer, answersOf, asking, isUnmet, wishMetBy } from './answers.ts';
import { type Asked, askedIn, boundsOf, onlyRanks, wishesOf } from './asked.ts';
import { askedWords, insteadWords } from './asked-words.ts';
import { fieldsOf } from './field.ts';
import { kindsIn, ownCorner } from './fit.ts';
import { outwardOf, type Ranked, searchFits } from './search.ts';
import { withFit } from './smallest-change.ts';
import type { Stitching } from './stitching.ts';
import { waysOf } from './ways.ts';

export interface Unmet {
  /** Nearest first; none of them meets every range. */
  readonly nearest: readonly Ranked[];
  /** What cannot be had together, and what the nearest takes. */
  readonly problem: Problem;
}

/**
 * For a plan that nothing fits; undefined where that is not because of what is asked of its swags. `beyond` holds what
 * each row beyond the first is searched among, or the second kind, or the corners.
 */
export const unmetWishes = (
  plan: Plan,
  stitchings: readonly Stitching[],
  beyond: readonly (readonly Stitching[])[],
): Unmet | undefined => {
  if (!askedIn(plan).some((asked) => !onlyRanks(asked))) return undefined;
  const nearest = searchFits(plan, stitchings, 'rank', beyond)
    .results.slice(0, plan.rows.length > 0 ? FEW_NEAREST : MOST_NEAREST)
    .flatMap((ranked) => asTaken(ranked, plan, beyond) ?? []);
  const [first] = nearest;
  const kinds = plan.swag.alternate || plan.corner ? beyond : [];
  return first && { nearest, problem: problemOf(plan, { stitchings, kinds }, first) };
};

/** More than anyone looks through. */
const MOST_NEAREST = 100;
/** Of two rows each takes a search of its own for the second. */
const FEW_NEAREST = 20;

/**
 * A fit as the plan gives it that asks for what it meets. That is seldom just the fit that was found: where a range
 * leaves the corners free, they are set so that depths are most alike, and not so that the range would be narrower.
 * Undefined where it gives none: what a fit would take is tried, not guessed.
 */
const asTaken = (
  ranked: Ranked,
  plan: Plan,
  beyond: readonly (readonly Stitching[])[],
): Ranked | undefined => {
  const { field, fit } = ranked;
  const { layout } = plan;
  const less = withFit(askingLess(ranked, plan), fit);
  const { corners } = field;
  const pinned: Plan =
    hasCorners(layout) && corners !== 'none' ? { ...less, layout: { ...layout, corners } } : less;
  const repeats = fit.sides.map((side) => side.repeats);
  const swag = closesRound(layout) ? pinned.swag : { ...pinned.swag, repeats };
  const [own, ...kinds] = [...kindsIn(fit).map(({ way }) => way), ownCorner(fit) ?? []]
    .flat()
    .map(({ shape }) => [shape.stitching]);
  const others = plan.swag.alternate || plan.corner ? kinds : beyond;
  const [found] = searchFits({ ...pinned, swag }, own!, 'bind', others).results;
  if (!found) return undefined;
  const wishes = wishesOf(plan, 'rank');
  const answers = wishes
    ? answersOf(found.fit, { wishes, field: found.field, outward: outwardOf(plan) })
    : [];
  return { ...found, answers };
};

/** The wishes that a fit would meet instead of those that it does not, each the smallest change of its own. */
export const changesFor = ({ answers }: Pick<Ranked, 'answers'>, style: LengthStyle): readonly WishChange[] =>
  answers.filter(isUnmet).map((answer) => changeOf(answer, style));

interface WishChange {
  readonly answer: Answer;
  readonly wish: CountWish;
  /** `depth at least 2 7/8 in instead of at least 3 in` */
  readonly text: string;
}

export const changeOf = (answer: Answer, style: LengthStyle): WishChange => {
  const wish = wishMetBy(answer, style);
  return { answer, wish, text: insteadWords(answer, wish, style) };
};

/** The plan with those wishes: the fit is one that it finds. */
export const askingLess = (ranked: Pick<Ranked, 'answers'>, plan: Plan): Plan =>
  changesFor(ranked, plan.marks.style).reduce((less, { answer, wish }) => asking(less, answer, wish), plan);

/** What the first row is searched among, and what a second kind is. */
interface Among {
  readonly stitchings: readonly Stitching[];
  readonly kinds: readonly (readonly Stitching[])[];
}

const isFound = (plan: Plan, { stitchings, kinds }: Among): boolean =>
  searchFits(plan, stitchings, 'bind', kinds).results.length > 0;

const problemOf = (plan: Plan, among: Among, nearest: Ranked): Problem => {
  const { key, words, on } = apart(plan, among);
  const changes = changesFor(nearest, plan.marks.style).map(({ text }) => text);
  return {
    code: 'nothing-fits',
    key: `swag.${key}`,
    message: `${series(words)} cannot ${words.length === 2 ? 'both' : 'all'} be had${on ?? ''}`,
    hint: `the nearest takes ${series(changes)}`,
  };
};

interface Apart {
  /** The key that one of them is asked for by. */
  readonly key: Asked['key'];
  readonly words: readonly string[];
  /** Where it is not all of the band that they cannot be had on: ` on a side of 60 in`. */
  readonly on?: string;
}

/** The fewest things that cannot be had together: by reckoning, else by searching with one of them, with two, and so on. */
const apart = (plan: Plan, among: Among): Apart => {
  const asked = askedIn(plan).filter((one) => !onlyRanks(one));
  const words = (some: readonly Asked[]): readonly string[] =>
    some.map((one) => askedWords(one, plan.marks.style));
  const canBeHad = (some: readonly Asked[]): boolean => {
    const left = asked.filter((one) => !some.includes(one));
    const less = left.reduce((p, one) => asking(p, one, undefined), plan);
    return isFound(less, among);
  };
  const tooMany = tooManyForSide(plan, asked);
  if (tooMany) return { key: 'span', words: words(tooMany.pair), on: tooMany.on };
  for (const one of asked)
    if (!canBeHad([one])) return { key: one.key, words: [...words([one]), against(one, plan, among)] };
  for (let i = 0; i < asked.length; i++)
    for (let k = i + 1; k < asked.length; k++) {
      const pair = [asked[i]!, asked[k]!];
      if (!canBeHad(pair)) return { key: pair[1]!.key, words: words(pair) };
    }
  return { key: asked[0]!.key, words: words(asked) };
};

/** As many swags as are asked for, as wide as is asked, that no side is long enough for. */
const tooManyForSide = (
  { layout, marks }: Plan,
  asked: readonly Asked[],
): { readonly pair: readonly Asked[]; readonly on: string } | undefined => {
  const span = asked.find(({ key, of }) => key === 'span' && of === undefined);
  if (!span || closesRound(layout)) return undefined;
  const [widest] = boundsOf(span);
  const [field] = fieldsOf(layout);
  for (const repeats of asked.filter(({ key }) => key === 'repeats'))
    for (const [i, run] of field!.runs.entries()) {
      if (repeats.on !== undefined && repeats.on !== i) continue;
      if (boundsOf(repeats)[0] * widest > run.length)
        return { pair: [repeats, span], on: ` on a side of ${formatLength(run.length, marks.style)}` };
    }
  return undefined;
};

/** What of the plan a single wish cannot be had with. */
const against = (asked: Asked, plan: Plan, among: Among): string => {
  const { layout, marks, channels, swag } = plan;
  const { stitchings } = asked.of === 1 ? { stitchings: among.kinds[0] ?? among.stitchings } : among;
  const made = { swag: swag.alternate?.[asked.of ?? 0] ?? swag };
  const length = (mm: number): string => formatLength(mm, marks.style);
  const [least] = boundsOf(asked);
  const fields = closesRound(layout) ? [] : fieldsOf(layout);
  const room = Math.max(...fields.map((field) => field.room));
  const outward = channels.outward.reduce((a, b) => a + b, 0);
  // A round frame has no room before it is known what goes into it.
  if (asked.key === 'depth' && fields.length > 0 && least > room - outward)
    return outward > 0
      ? `${length(room)} of room, of which the channels take ${length(outward)},`
      : `${length(room)} of room`;
  const chord = Math.max(...stitchings.flatMap((s) => waysOf(s, made)).map(({ shape }) => shape.chord));
  if (least > { depth: chord, span: 2 * chord, use: 1, repeats: least, gap: least }[asked.key]) {
    const names = series(stitchings.map((s) => s.template.title));
    return `half swags of ${length(chord)} at most from start to crown (${names})`;
  }
  const alone = askedIn(plan)
    .filter((one) => one.key !== asked.key || one.on !== asked.on || one.of !== asked.of)
    .reduce((p, one) => asking(p, one, undefined), plan);
  const open = freer(alone).find(({ plan: freed }) => isFound(freed, among));
  if (open) return open.text;
  const [first] = fields;
  return first && asked.key !== 'depth' && asked.key !== 'use'
    ? `${first.runs.length > 1 ? 'sides' : 'a side'} of ${series(first.runs.map((run) => length(run.length)))}`
    : `this ${layoutKey(layout)} with ${stitchings.length > 1 ? 'these templates' : 'this template'}`;
};

/** A plan without one of the things that it says, each. */
const freer = (plan: Plan): readonly { readonly text: string; readonly plan: Plan }[] => {
  const { swag, corner, layout, channels } = plan;
  const keys = ['setting', 'laid', 'flat', 'side', 'direction', 'from', 'to'] as const;
  const changes = keys
    .filter((key) => swag[key] !== undefined)
    .map((key) => ({
      text: `what the plan says of swag.${key}`,
      plan: { ...plan, swag: { ...swag, [key]: undefined } },
    }));
  if (corner?.smooth)
    changes.push({
      text: 'smooth: true of the corner',
      plan: { ...plan, corner: { ...corner, smooth: false } },
    });
  if (channels.outward.length > 0)
    changes.push({ text: 'the outward channels', plan: { ...plan, channels: { ...channels, outward: [] } } });
  if (hasCorners(layout) && layout.corners !== undefined)
    changes.push({
      text: `corners: ${layout.corners}`,
      plan: { ...plan, layout: { ...layout, corners: undefined } },
    });
  return changes;
};
