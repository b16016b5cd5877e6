/**
 * A small reader of absolute path data, written from the standard and not from the writer: arcs are brought
 * from ends to centre by SVG 2 (W3C, 2018), appendix B.2.4, for circles.
 */

export type Segment =
  | { kind: 'line'; from: [number, number]; to: [number, number] }
  | {
      kind: 'arc';
      from: [number, number];
      to: [number, number];
      center: [number, number];
      radius: number;
      /** Degrees as drawn, positive clockwise to the eye (y down). */
      turn: number;
    };

export const readPath = (d: string): Segment[][] => {
  const tokens = d.match(/[A-Za-z]|-?\d+(\.\d+)?/g) ?? [];
  // Whatever is neither token nor space was not understood, an exponent for example.
  if (tokens.join('') !== d.replace(/\s+/g, '')) throw new Error(`cannot read ${d}`);
  const runs: Segment[][] = [];
  let at: [number, number] = [0, 0];
  let start: [number, number] = [0, 0];
  let i = 0;
  const number = (): number => Number(tokens[i++]);
  const pair = (): [number, number] => [number(), number()];
  while (i < tokens.length) {
    const command = tokens[i++];
    if (command === 'M') {
      at = pair();
      start = at;
      runs.push([]);
      continue;
    }
    const run = runs.at(-1)!;
    if (command === 'L') {
      const to = pair();
      run.push({ kind: 'line', from: at, to });
      at = to;
    } else if (command === 'Z') {
      if (at[0] !== start[0] || at[1] !== start[1]) run.push({ kind: 'line', from: at, to: start });
      at = start;
    } else if (command === 'A') {
      const rx = number();
      const ry = number();
      const tilt = number();
      const large = number();
      const sweep = number();
      if (rx !== ry || tilt !== 0) throw new Error('not a circle');
      const to = pair();
      run.push(arcSegment(at, to, rx, large === 1, sweep === 1));
      at = to;
    } else throw new Error(`unknown command ${command}`);
  }
  return runs;
};

const arcSegment = (
  from: [number, number],
  to: [number, number],
  r: number,
  large: boolean,
  sweep: boolean,
): Segment => {
  // B.2.4 with phi = 0 and rx = ry: (x1', y1') is half the chord.
  const x1 = (from[0] - to[0]) / 2;
  const y1 = (from[1] - to[1]) / 2;
  const half2 = x1 * x1 + y1 * y1;
  const root = Math.sqrt(Math.max(0, (r * r - half2) / half2)) * (large === sweep ? -1 : 1);
  const cx = root * y1;
  const cy = -root * x1;
  const center: [number, number] = [cx + (from[0] + to[0]) / 2, cy + (from[1] + to[1]) / 2];
  const a = Math.atan2(from[1] - center[1], from[0] - center[0]);
  const b = Math.atan2(to[1] - center[1], to[0] - center[0]);
  let turn = ((b - a) * 180) / Math.PI;
  if (sweep && turn < 0) turn += 360;
  if (!sweep && turn > 0) turn -= 360;
  return { kind: 'arc', from, to, center, radius: r, turn };
};
