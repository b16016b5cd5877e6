/**
 * Templates of invented shapes as rings of points in mm, y up, clockwise, about the origin: made here of lines, arcs
 * and Bézier curves by their textbook equations, and of nothing that the program has.
 */

import type { Place } from '../camera.ts';

export interface Shape {
  readonly name: string;
  /** Points 0.1 mm apart at most along what bends; the first is not given again. */
  readonly ring: readonly Place[];
  /** Where it turns by 20° and more. */
  readonly corners: readonly Place[];
}

/** The step of a curve, mm. */
const STEP = 0.1;

class Pen {
  readonly ring: Place[] = [];
  private at: Place;
  constructor(at: Place) {
    this.at = at;
    this.ring.push(at);
  }
  to(x: number, y: number): this {
    this.at = { x, y };
    this.ring.push(this.at);
    return this;
  }
  /** An arc of a circle; `rise` is its height over the chord, positive on the left of the way. */
  arc(x: number, y: number, rise: number): this {
    const { x: x0, y: y0 } = this.at;
    const [dx, dy] = [x - x0, y - y0];
    const chord = Math.hypot(dx, dy);
    const radius = (chord * chord) / (8 * Math.abs(rise)) + Math.abs(rise) / 2;
    const side = Math.sign(rise);
    const [nx, ny] = [(-dy / chord) * side, (dx / chord) * side];
    const deep = radius - Math.abs(rise);
    const [cx, cy] = [(x0 + x) / 2 - nx * deep, (y0 + y) / 2 - ny * deep];
    const start = Math.atan2(y0 - cy, x0 - cx);
    const half = Math.acos(Math.max(-1, Math.min(1, deep / radius)));
    const count = Math.ceil((2 * half * radius) / STEP);
    for (let i = 1; i < count; i++) {
      const a = start - (side * 2 * half * i) / count;
      this.ring.push({ x: cx + radius * Math.cos(a), y: cy + radius * Math.sin(a) });
    }
    return this.to(x, y);
  }
  curve(b: Place, c: Place, d: Place): this {
    const a = this.at;
    const count = Math.ceil(
      (Math.hypot(b.x - a.x, b.y - a.y) + Math.hypot(d.x - c.x, d.y - c.y) + 60) / STEP,
    );
    for (let i = 1; i < count; i++) {
      const t = i / count;
      const s = 1 - t;
      const [u, v, w, z] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      this.ring.push({ x: u * a.x + v * b.x + w * c.x + z * d.x, y: u * a.y + v * b.y + w * c.y + z * d.y });
    }
    return this.to(d.x, d.y);
  }
  /** A wave of so many crests about the line to a place, as high as said. */
  wave(x: number, y: number, crests: number, high: number): this {
    const a = this.at;
    const [dx, dy] = [x - a.x, y - a.y];
    const long = Math.hypot(dx, dy);
    const count = Math.ceil((2 * long) / STEP);
    for (let i = 1; i < count; i++) {
      const t = i / count;
      const h = high * (1 - Math.cos(2 * Math.PI * crests * t)) * 0.5;
      this.ring.push({ x: a.x + dx * t - (dy / long) * h, y: a.y + dy * t + (dx / long) * h });
    }
    return this.to(x, y);
  }
}

const TURN = (20 * Math.PI) / 180;

const cornersOf = (ring: readonly Place[]): readonly Place[] =>
  ring.filter((p, i) => {
    const a = ring.at(i - 1)!;
    const b = ring[(i + 1) % ring.length]!;
    const turn = Math.atan2(
      (p.x - a.x) * (b.y - p.y) - (p.y - a.y) * (b.x - p.x),
      (p.x - a.x) * (b.x - p.x) + (p.y - a.y) * (b.y - p.y),
    );
    return Math.abs(turn) >= TURN;
  });

const shape = (name: string, pen: Pen): Shape => ({ name, ring: pen.ring, corners: cornersOf(pen.ring) });

/** Backs on the left, from the lower corner up; the working edge on the right, from the top down. */
const back = (x: number): Pen => new Pen({ x, y: -90 }).to(x, 90);

export const SHAPES: readonly Shape[] = [
  // Three notches in a gentle wave: a right angle, a narrower one, and one cut square.
  shape(
    'notches',
    back(-45)
      .to(5, 90)
      .arc(12, 42, 4)
      .to(6, 36)
      .to(12, 30)
      .arc(12, 4, 2.5)
      .to(4, 0)
      .to(12, -4)
      .arc(10, -40, 3)
      .to(4, -40)
      .to(4, -46)
      .to(10, -46)
      .arc(0, -90, 5),
  ),
  // Scallops whose cusps point inwards, and two that point outwards.
  shape(
    'cusps',
    back(-50)
      .to(0, 90)
      .arc(0, 54, 12)
      .arc(0, 26, 9)
      .arc(22, 0, -5)
      .arc(2, -28, -5)
      .arc(2, -60, 10)
      .arc(-8, -90, 7),
  ),
  // Straight stretches with corners of 25° to 70° between them, and one that runs on into an arc without a corner.
  shape(
    'flats',
    back(-40)
      .to(-5, 90)
      .to(12, 62)
      .to(14, 38)
      .to(-4, 20)
      .to(-4, -4)
      .arc(16, -24, 20 * Math.SQRT1_2 - 20)
      .to(24, -24)
      .to(20, -56)
      .to(0, -90),
  ),
  shape('smooth', back(-55).to(-20, 90).wave(-20, -90, 2, 34)),
  // Nothing but curves: no corner anywhere.
  (() => {
    const ring = Array.from({ length: 6000 }, (_, i) => {
      const a = (-2 * Math.PI * i) / 6000;
      const r = 1 + 0.12 * Math.cos(3 * a) + 0.05 * Math.sin(2 * a);
      return { x: 45 * r * Math.cos(a), y: 80 * r * Math.sin(a) };
    });
    return { name: 'round', ring, corners: [] };
  })(),
  shape(
    'ogee',
    back(-50)
      .to(-25, 90)
      .curve({ x: 5, y: 60 }, { x: -5, y: 45 }, { x: 20, y: 10 })
      .curve({ x: 60, y: -5 }, { x: -5, y: -60 }, { x: -20, y: -90 }),
  ),
];
