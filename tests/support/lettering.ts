/** Lines of type as the rectangles that their letters take, and how far two of them are apart. */

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The four corners, one after another round it. */
export type Rectangle = readonly [Spot, Spot, Spot, Spot];

/** Of DejaVu Sans, as shares of its size: how high capitals are, and how far what hangs down does so. */
const OVER = 0.73;
const UNDER = 0.24;
const HANGS = /[gjpqyQ,;()]/;

/** What letters take from the beginning to the end of their base line, in mm; `size` is that of the type. */
export const lettering = (text: string, from: Spot, to: Spot, size: number): Rectangle => {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const up = { x: -(to.y - from.y) / long, y: (to.x - from.x) / long };
  const at = (spot: Spot, by: number): Spot => ({ x: spot.x + by * up.x, y: spot.y + by * up.y });
  const [over, under] = [OVER * size, HANGS.test(text) ? -UNDER * size : 0];
  return [at(from, under), at(to, under), at(to, over), at(from, over)];
};

/**
 * mm between two rectangles along the side of either on which they are farthest apart; below 0 where they lie on one
 * another. Two convex shapes that are apart are apart along a side of one of them (separating axis theorem).
 */
const apartBy = (a: Rectangle, b: Rectangle): number => {
  const sides = [a, b].flatMap((of) => of.map((p, i) => [p, of[(i + 1) % 4]!] as const));
  const gaps = sides.map(([p, q]) => {
    const long = Math.hypot(q.x - p.x, q.y - p.y);
    const along = (of: Rectangle) => of.map(({ x, y }) => ((q.y - p.y) * x - (q.x - p.x) * y) / long);
    const [one, other] = [along(a), along(b)];
    return Math.max(Math.min(...one) - Math.max(...other), Math.min(...other) - Math.max(...one));
  });
  return Math.max(...gaps);
};

/** The pairs that are not so far (mm) apart, for a person to read. */
export const tooClose = (
  lines: readonly { readonly text: string; readonly room: Rectangle }[],
  least: number,
): readonly string[] =>
  lines.flatMap((a, i) =>
    lines.slice(i + 1).flatMap((b) => {
      const gap = apartBy(a.room, b.room);
      return gap < least ? [`${a.text} | ${b.text}: ${gap.toFixed(2)}`] : [];
    }),
  );
