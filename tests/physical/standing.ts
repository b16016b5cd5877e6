/** What a card tells of how things stand (the places of the template, pauses, sides), beside the drawn template. */

import type { Piece } from '../../src/geometry/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import {
  type Acrylic,
  apart,
  type Lie,
  minus,
  onAcrylic,
  onCloth,
  plus,
  type Spot,
  wedge,
} from './acrylic.ts';
import type { Read } from './card-reader.ts';
import { seenFrom } from './cloth.ts';
import { type Half, told } from './halves.ts';
import { flatNamed, lieOf } from './setting.ts';

export interface Standing {
  readonly half: Half;
  readonly read: Read;
  readonly plan: Plan;
  readonly acrylic: Acrylic;
  /** As drawn. */
  readonly lie: Lie;
  /** As drawn, from the start mark to the crown. */
  readonly stitch: readonly Piece[];
  /** Half a step of the card's figures, mm. */
  readonly rounding: number;
}

/** A template whose two ends lie in two places. */
export const layBetween = (acrylic: Acrylic, over: boolean, heel: Spot, crownEnd: Spot): Lie => {
  const [a, b] = [acrylic.place(0).spot, acrylic.place(acrylic.length).spot];
  const angle = (from: Spot, to: Spot): number => Math.atan2(to.y - from.y, to.x - from.x);
  return lieOf(over, angle(heel, crownEnd) - (over ? -1 : 1) * angle(a, b), a, heel);
};

export const faultsOfStanding = (standing: Standing): string[] => [
  ...faultsOfPlaces(standing),
  ...faultsOfSentences(standing),
  // The second half passes the same places on its way back.
  ...faultsOfPauses(standing),
];

type Wrong = (what: string, said: number, is: number, limit?: number) => void;

const collect = ({ read, rounding, acrylic }: Standing, find: (wrong: Wrong) => void): string[] => {
  const faults: string[] = [];
  // Of a wreath's rays a tenth of a degree is told.
  const turned = read.rays ? acrylic.length * 0.001 : 0;
  find((what, said, is, limit = rounding + turned + 0.02) => {
    if (!(Math.abs(said - is) <= limit))
      faults.push(`${what} is said to be ${said.toFixed(2)}, and is ${is.toFixed(2)}`);
  });
  return faults;
};

const spotOn = ({ acrylic, lie }: Standing, words: string): Spot => {
  const named = acrylic.named(words);
  if (!named) throw new Error(`${words}: no such place on the edge`);
  return onCloth(lie, acrylic.place(named.at).spot);
};

const faultsOfPlaces = (standing: Standing): string[] =>
  collect(standing, (wrong) => {
    const { half, read, plan, acrylic, lie, stitch } = standing;
    for (const [head, cell] of read.stands.toldOf(half.row)) {
      if (cell === '-') continue;
      const said = told(cell, plan);
      const near = seenFrom(half.stand, spotOn(standing, read.stands.near));
      const far = read.stands.far === undefined ? undefined : spotOn(standing, read.stands.far);
      // Round a motif a place is told by how far it is from the centre, which is where the cloth begins.
      const upOf = (spot: Spot): number =>
        read.rays ? Math.hypot(spot.x, spot.y) : half.startUp + seenFrom(half.stand, spot).up;
      if (head === 'near end along') wrong(head, said, near.along);
      else if (head === 'near end up') wrong(head, said, upOf(spotOn(standing, read.stands.near)));
      else if (head === 'far end up') wrong(head, said, upOf(far!));
      else if (head === 'far end along') {
        const { centre, crown, stand } = half;
        const beside = (p: Spot): number => wedge(centre, minus(p, crown)) / Math.hypot(centre.x, centre.y);
        wrong(head, said, -Math.sign(beside(stand.at)) * beside(far!));
      } else if (head === 'the guide line up') {
        if (read.instruction.kind !== 'flat') throw new Error('No flat is laid');
        const flat = flatNamed(acrylic, read.instruction.flat);
        for (const end of [flat.from, flat.to])
          wrong(head, said, half.startUp + seenFrom(half.stand, onCloth(lie, end)).up);
      } else if (head === 'the needle at the crown up') {
        wrong(head, said, upOf(stitch.at(-1)!.to));
      } else if (head.startsWith('line ')) {
        const line = acrylic.template.alignment.find((a) => `line ${a.name} along` === head)!;
        const [a, b] = [0, 1].map((y) => seenFrom(half.stand, onCloth(lie, { x: line.at, y }))) as [
          Seen,
          Seen,
        ];
        const crossing = a.along - (a.up * (b.along - a.along)) / (b.up - a.up);
        // A slanting line crosses far away, where a tenth of a degree of a ray shows.
        const turned = read.rays ? 0.004 * Math.abs(crossing) : 0;
        wrong(head, said, crossing, standing.rounding + 0.05 + turned);
      } else throw new Error(`Not understood: ${head}`);
    }
  });

type Seen = ReturnType<typeof seenFrom>;

/** By so much (radians) a ray is off that is told to a tenth of a degree: half of that. */
const RAY = (0.05 * Math.PI) / 180;

const faultsOfSentences = (standing: Standing): string[] =>
  collect(standing, (wrong) => {
    const { half, read, acrylic, lie, stitch } = standing;
    if (read.back) {
      const { back } = read;
      const place = spotOn(standing, back.place);
      wrong(`how far from the needle ${back.place} is`, back.away, apart(place, stitch[0]!.from));
      if (back.inside !== read.inside) wrong('the side', 0, 1);
    }
    if (read.rest) {
      const { end, least, most } = read.rest;
      const hung = spotOn(standing, end);
      const out = -seenFrom(half.stand, hung).along;
      // A wreath's rays are told to a tenth of a degree, and half of that turns what hangs far from the start mark.
      const turned = read.rays ? RAY * apart(hung, half.stand.at) : 0;
      // Sides that are alike are told as one.
      wrong(
        `how far out ${end} is`,
        Math.min(most, Math.max(least, out)),
        out,
        1.5 * standing.rounding + 0.02 + turned,
      );
    }
    // The acrylic lies where the edge is, seen from the needle on its way.
    const way = walk(stitch, 2);
    // All along, because at a sharp turn the edge lies otherwise to the way before than to the way after.
    const sides = way.slice(1).map(({ spot: next }, i) => {
      const here = way[i]!.spot;
      const edge = onCloth(lie, acrylic.place(acrylic.feel(onAcrylic(lie, here)).at).spot);
      return Math.sign(wedge(minus(next, here), minus(edge, here)));
    });
    const acrylicSide = Math.sign(sides.reduce((a, b) => a + b));
    const seamSide = -Math.sign(wedge(half.stand.along, half.stand.up));
    if ((acrylicSide === seamSide) !== read.inside) wrong('the side of the swag', 0, 1);
  });

/** Points along stitching, with the way to each. */
const walk = (
  pieces: readonly Piece[],
  step: number,
): readonly { readonly spot: Spot; readonly along: number }[] => {
  const points: { spot: Spot; along: number }[] = [];
  let before = 0;
  for (const p of pieces) {
    const length = p.kind === 'line' ? apart(p.from, p.to) : Math.abs(p.sweep) * p.radius;
    const n = Math.max(1, Math.ceil(length / step));
    for (let i = points.length === 0 ? 0 : 1; i <= n; i++) {
      const by = i / n;
      const spot =
        p.kind === 'line'
          ? plus(p.from, minus(p.to, p.from), by)
          : plus(
              p.center,
              { x: Math.cos(p.start + by * p.sweep), y: Math.sin(p.start + by * p.sweep) },
              p.radius,
            );
      points.push({ spot, along: before + by * length });
    }
    before += length;
  }
  return points;
};

/** Stitching is followed in steps of at most this (mm) to find what lies nearest. */
const FINE = 0.1;

/** Where stitching turns sharply it is nearest to the break, and what lies within this of the nearest is as near (mm). */
const AS_NEAR = 2e-3;

const faultsOfPauses = (standing: Standing): string[] =>
  collect(standing, (wrong) => {
    const { read, acrylic, lie, stitch, rounding } = standing;
    // A second half is drawn from its stop mark, and the card says that its places are as far before that.
    const way = walk(stitch, FINE);
    const whole = way.at(-1)!.along;
    /** All places of the way within `most()` of a spot; what lies too far beyond it for the next ones to be near is passed over. */
    const eachNear = (p: Spot, most: () => number, take: (along: number, away: number) => void): void => {
      for (let i = 0; i < way.length; ) {
        const { spot, along } = way[i]!;
        const away = apart(spot, p);
        if (away <= most()) take(along, away);
        i += Math.max(1, Math.floor((away - most()) / FINE));
      }
    };
    const nearest = (p: Spot) => {
      let least = Number.POSITIVE_INFINITY;
      const take = (_: number, away: number): void => {
        least = away;
      };
      eachNear(p, () => least, take);
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      const span = (along: number): void => {
        low = Math.min(low, along);
        high = Math.max(high, along);
      };
      eachNear(p, () => least + AS_NEAR, span);
      return { least, low, high };
    };
    // Where the foot touches at the two ends: stitching may come nearer to a place that it leaves behind.
    const [first, last] = [stitch[0]!.from, stitch.at(-1)!.to].map(
      (p) => acrylic.feel(onAcrylic(lie, p)).at,
    ) as [number, number];
    for (const [i, brk] of acrylic.template.breaks.entries()) {
      const said = read.pauses.find((p) => p.section === i + 2);
      const { low, high } = nearest(onCloth(lie, brk.point));
      const isBetween = (brk.at - first) * (brk.at - last) < 0;
      const isPassed = isBetween && low > 1 && high < whole - 1;
      if (!said) {
        if (isPassed) wrong(`a pause at section ${i + 2}`, 0, low);
        continue;
      }
      if (said.kind !== brk.kind) wrong(`that section ${i + 2} starts at a ${said.kind}`, 0, 1);
      // A swag that stops sooner does not come to every place.
      if (said.after < whole)
        wrong(
          `the pause at section ${i + 2}`,
          said.after,
          Math.min(high, Math.max(low, said.after)),
          rounding + 0.4,
        );
    }
    for (const { from, to, away } of read.unreached) {
      const n = Math.ceil((to - from) / 0.1);
      const places = Array.from({ length: n + 1 }, (_, i) =>
        onCloth(lie, acrylic.place(from + ((to - from) * i) / n).spot),
      );
      const found = places.map(nearest);
      const deepest = Math.max(...found.map((n) => n.least));
      // Nor does it come to this one, where no stitching is nearer than its own end.
      const stopsBefore = found.some((n) => n.least === deepest && n.high > whole - 1);
      if (!stopsBefore) wrong('what the foot does not reach', away, deepest, 2 * rounding + 0.15);
    }
  });
