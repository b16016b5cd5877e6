/**
 * A template as a thing in the hand: a rigid edge, and a round foot that is pressed against it. Nothing here rolls a
 * foot along anything: where the foot stands is felt by its distance from the edge alone.
 */

import type { Template } from '../../src/template/index.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How acrylic lies on the cloth: turned over or not, then turned (radians, counterclockwise), then moved (mm). */
export interface Lie {
  readonly over: boolean;
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

export const onCloth = (lie: Lie, p: Spot): Spot => {
  const [c, s, y] = [Math.cos(lie.angle), Math.sin(lie.angle), lie.over ? -p.y : p.y];
  return { x: c * p.x - s * y + lie.x, y: s * p.x + c * y + lie.y };
};

export const onAcrylic = (lie: Lie, p: Spot): Spot => {
  const [c, s, x, y] = [Math.cos(lie.angle), Math.sin(lie.angle), p.x - lie.x, p.y - lie.y];
  const across = c * y - s * x;
  return { x: c * x + s * y, y: lie.over ? -across : across };
};

export const plus = (a: Spot, b: Spot, by = 1): Spot => ({ x: a.x + by * b.x, y: a.y + by * b.y });
export const minus = (a: Spot, b: Spot): Spot => ({ x: a.x - b.x, y: a.y - b.y });
export const dot = (a: Spot, b: Spot): number => a.x * b.x + a.y * b.y;
export const wedge = (a: Spot, b: Spot): number => a.x * b.y - a.y * b.x;
export const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);
const toLeft = (d: Spot): Spot => ({ x: -d.y, y: d.x });
const unit = (d: Spot): Spot => plus({ x: 0, y: 0 }, d, 1 / Math.hypot(d.x, d.y));

/** Where the edge is nearest to a needle. */
export interface Feel {
  /** mm from the edge; negative where the needle would stand in the acrylic. */
  readonly away: number;
  /** mm along the edge from the heel. */
  readonly at: number;
  /** mm by which the needle lies past one of the edge's two ends. */
  readonly pastEnd: number;
}

export class Acrylic {
  readonly template: Template;
  readonly clearance: number;
  readonly length: number;
  private readonly pieces: Template['edge']['pieces'];
  private readonly starts: number[] = [];

  constructor(template: Template, clearance: number) {
    this.template = template;
    this.clearance = clearance;
    this.pieces = template.edge.pieces;
    let length = 0;
    for (const p of this.pieces) {
      this.starts.push(length);
      length += p.kind === 'line' ? apart(p.from, p.to) : Math.abs(p.sweep) * p.radius;
    }
    this.length = length;
  }

  /** A place on the edge, and the way on from it; at a corner that of the piece before or after. */
  place(at: number, beside: 'before' | 'after' = 'after'): { readonly spot: Spot; readonly way: Spot } {
    let i = this.pieces.length - 1;
    const sure = beside === 'after' ? 1e-7 : -1e-7;
    while (i > 0 && this.starts[i]! > at + sure) i--;
    const p = this.pieces[i]!;
    const by = at - this.starts[i]!;
    if (p.kind === 'line') {
      const way = unit(minus(p.to, p.from));
      return { spot: plus(p.from, way, by), way };
    }
    const sense = Math.sign(p.sweep);
    const angle = p.start + (sense * by) / p.radius;
    const out = { x: Math.cos(angle), y: Math.sin(angle) };
    return { spot: plus(p.center, out, p.radius), way: { x: -sense * out.y, y: sense * out.x } };
  }

  /** What a foot at a needle (on the acrylic) feels of the edge. */
  feel(needle: Spot): Feel {
    let best = Number.POSITIVE_INFINITY;
    let at = 0;
    for (const [i, p] of this.pieces.entries()) {
      if (p.kind === 'line') {
        const length = apart(p.from, p.to);
        const along = dot(minus(needle, p.from), minus(p.to, p.from)) / length;
        const by = Math.min(length, Math.max(0, along));
        const d = apart(needle, plus(p.from, minus(p.to, p.from), by / length));
        if (d < best) [best, at] = [d, this.starts[i]! + by];
        continue;
      }
      const sense = Math.sign(p.sweep);
      const off = minus(needle, p.center);
      const turned = (((sense * (Math.atan2(off.y, off.x) - p.start)) % TURN) + TURN) % TURN;
      const size = Math.abs(p.sweep);
      const [d, by] =
        turned <= size ? [Math.abs(Math.hypot(off.x, off.y) - p.radius), turned] : [apart(needle, p.from), 0];
      if (d < best) [best, at] = [d, this.starts[i]! + by * p.radius];
      const end = apart(needle, p.to);
      if (end < best) [best, at] = [end, this.starts[i]! + size * p.radius];
    }
    const before = this.place(at, 'before');
    const after = this.place(at, 'after');
    const off = minus(needle, after.spot);
    const pastEnd = Math.max(
      at < 1e-7 ? -dot(off, after.way) : 0,
      at > this.length - 1e-7 ? dot(off, before.way) : 0,
    );
    const side = wedge(plus(before.way, after.way), off);
    return { away: side >= 0 ? best : -best, at, pastEnd };
  }

  /**
   * Where the needle stands (on the acrylic) with the foot at a place: pressed against the edge as near to the place
   * as it will go. The start of a section is where the foot has come round its corner, the end where it comes to it.
   */
  needleAt(at: number, beside: 'before' | 'after'): Spot {
    const sense = beside === 'after' ? 1 : -1;
    const stand = (t: number): Spot => {
      const { spot, way } = this.place(t, beside);
      return plus(spot, toLeft(way), this.clearance);
    };
    const free = (t: number): boolean => this.feel(stand(t)).away >= this.clearance - 1e-7;
    if (free(at)) return stand(at);
    // In a notch the foot comes no nearer than where it touches both sides.
    let near = at;
    let far = at;
    do {
      near = far;
      far += sense * 0.02;
      if (far < 0 || far > this.length) throw new Error(`The foot does not come near ${at} mm of the edge`);
    } while (!free(far));
    for (let i = 0; i < 40; i++) {
      const mid = (near + far) / 2;
      if (free(mid)) far = mid;
      else near = mid;
    }
    return stand(far);
  }

  /** Where the foot first comes over an etched line, on its way from the heel. */
  needleOverLine(x: number): Spot {
    let before = this.needleAt(0, 'after');
    for (let t = 0.01; t < this.length; t += 0.01) {
      const { spot, way } = this.place(t);
      const now = plus(spot, toLeft(way), this.clearance);
      if (this.feel(now).away < this.clearance - 1e-3) continue;
      if ((before.x - x) * (now.x - x) <= 0)
        return plus(before, minus(now, before), (x - before.x) / (now.x - before.x || 1));
      before = now;
    }
    throw new Error('The foot does not come over the line');
  }

  /** The place that a card's words name: mm along the edge, and on which side of a corner the foot is. */
  named(words: string): { readonly at: number; readonly beside: 'before' | 'after' } | undefined {
    if (words === 'the heel') return { at: 0, beside: 'after' };
    if (words === 'the crown end') return { at: this.length, beside: 'before' };
    const section = words.match(/^the (start|end) of section (\d+)(?: \((.*)\))?$/);
    if (!section) return undefined;
    const [, end, number, name] = section;
    const brk = this.template.breaks[Number(number) - (end === 'start' ? 2 : 1)];
    if (!brk) throw new Error(`${words}: there is no such section`);
    const own = this.template.breaks[Number(number) - 2];
    if ((own?.name ?? undefined) !== name) throw new Error(`${words}: that section has another name`);
    return { at: brk.at, beside: end === 'start' ? 'after' : 'before' };
  }
}

const TURN = 2 * Math.PI;
