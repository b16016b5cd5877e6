/** Points and plane vectors, in millimetres, y up. Both are the same plain pair; the name of a variable says which. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export const ORIGIN: Point = { x: 0, y: 0 };

/** A full turn in radians. */
export const TURN = 2 * Math.PI;

export const point = (x: number, y: number): Point => ({ x, y });
export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Point, by: number): Point => ({ x: a.x * by, y: a.y * by });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Positive when b lies to the left of a. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const norm = (a: Point): number => lengthOf(a.x, a.y);
export const distance = (a: Point, b: Point): number => lengthOf(a.x - b.x, a.y - b.y);

/** The length of a vector. Math.hypot is many times slower, and only needed where a square would vanish. */
export const lengthOf = (x: number, y: number): number => {
  const square = x * x + y * y;
  return square > VANISHING ? Math.sqrt(square) : Math.hypot(x, y);
};

/** Squares below this begin to lose digits to underflow. */
const VANISHING = 1e-290;

export const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** The vector a quarter turn to the left of a: the side on which the foot runs. */
export const leftOf = (a: Point): Point => ({ x: -a.y, y: a.x });

/** The unit vector along a; the zero vector stays zero, so that callers can ask for it with `norm`. */
export const unit = (a: Point): Point => {
  const n = norm(a);
  return n > 0 ? { x: a.x / n, y: a.y / n } : ORIGIN;
};

/** The unit vector at an angle (radians, counterclockwise from x). */
export const polar = (angle: number, radius = 1): Point => ({
  x: radius * Math.cos(angle),
  y: radius * Math.sin(angle),
});

export const angleOf = (a: Point): number => Math.atan2(a.y, a.x);

/** The signed angle from a to b, in (−π, π], positive to the left. */
export const turnBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));

/** An angle brought into [0, 2π). */
export const positiveAngle = (angle: number): number => {
  const a = angle % TURN;
  return a < 0 ? a + TURN : a;
};

export const isFinitePoint = (p: Point): boolean => Number.isFinite(p.x) && Number.isFinite(p.y);
