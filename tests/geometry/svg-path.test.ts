import { describe, expect, it } from 'vitest';
import { type Piece, pieceLength } from '../../src/geometry/piece.ts';
import { piecesFromSvgPath } from '../../src/geometry/svg-path.ts';

const read = (d: string): { pieces: Piece[]; closed: boolean } => {
  const result = piecesFromSvgPath(d);
  if (!result.ok) throw new Error(result.reason);
  return result;
};
const lengthOf = (d: string): number => read(d).pieces.reduce((s, p) => s + pieceLength(p), 0);
const reason = (d: string): string => {
  const result = piecesFromSvgPath(d);
  return result.ok ? `read ${result.pieces.length} pieces` : result.reason;
};

describe('lengths of path data', () => {
  // Expected lengths (±0.1): svg-path-properties, test/length.test.ts at 5c64a39 (ISC).
  const PUBLISHED = [
    ['M100,200 C100,100 250,100 250,200 S400,300 400,200', 475.746],
    ['M200,300 Q400,50 600,300', 487.77],
    ['M0,100 Q50,-50 100,100 T200,100', 376.84],
    ['M50,20A50,50,0,0,0,150,20', 157.1],
    [
      'M240,100C290,100,240,225,290,200S290,75,340,50S515,100,390,150S215,200,90,150S90,25,140,50S140,175,190,200S190,100,240,100',
      1329.45,
    ],
  ] as const;
  it('agree with the published values', () => {
    for (const [d, length] of PUBLISHED) expect(Math.abs(lengthOf(d) - length)).toBeLessThan(0.1);
    expect(PUBLISHED).toHaveLength(5);
  });

  it('agree with finer values of the same library, which the tolerance allows', () => {
    // svg-path-properties 1.3.0, run on Node 20.
    expect(lengthOf(PUBLISHED[0][0])).toBeCloseTo(475.7472988963, 2);
    expect(lengthOf(PUBLISHED[1][0])).toBeCloseTo(487.7710938955, 2);
    expect(lengthOf(PUBLISHED[2][0])).toBeCloseTo(376.8426479912, 2);
    expect(lengthOf(PUBLISHED[4][0])).toBeCloseTo(1329.4492491452, 1);
  });
});

describe('arcs', () => {
  it('a circular arc command is one true arc, exact to rounding', () => {
    const { pieces } = read('M50,20A50,50,0,0,0,150,20');
    expect(pieces).toHaveLength(1);
    expect(pieces[0]).toMatchObject({ kind: 'arc', radius: 50, center: { x: 100, y: 20 } });
    expect(pieceLength(pieces[0]!)).toBeCloseTo(50 * Math.PI, 12);
  });

  it('all four choices of flags', () => {
    // Two circles of radius 10 pass through (0,0) and (10,0): their centres are (5, ±√75). The small arc
    // spans 60°, the large one 300° (an equilateral triangle).
    const root = Math.sqrt(75);
    const cases = [
      ['0 0', -root, -60],
      ['0 1', root, 60],
      ['1 0', root, -300],
      ['1 1', -root, 300],
    ] as const;
    for (const [flags, y, degrees] of cases) {
      const [p] = read(`M0 0 A10 10 0 ${flags} 10 0`).pieces;
      if (p?.kind !== 'arc') throw new Error('not an arc');
      expect(p.center.x).toBeCloseTo(5, 12);
      expect(p.center.y).toBeCloseTo(y, 12);
      expect((p.sweep * 180) / Math.PI).toBeCloseTo(degrees, 9);
      expect(Math.hypot(p.center.x + p.radius * Math.cos(p.start + p.sweep) - 10, 0)).toBeLessThan(1e-9);
    }
  });

  it('radii too small grow until they reach, a zero radius is a line, equal ends are nothing', () => {
    const [grown] = read('M0 0 A1 1 0 0 1 10 0').pieces;
    expect(grown).toMatchObject({ kind: 'arc', radius: 5 });
    expect(read('M0 0 A0 5 0 0 1 10 0').pieces).toMatchObject([{ kind: 'line' }]);
    expect(read('M0 0 A5 5 0 0 1 0 0 L 3 4').pieces).toHaveLength(1);
  });

  it('packed flags and numbers', () => {
    expect(lengthOf('M0 0a5 5 0 0110 0')).toBeCloseTo(5 * Math.PI, 9);
    expect(lengthOf('M.5.5l.5-.5')).toBeCloseTo(Math.SQRT1_2, 9);
  });

  it('an ellipse comes near its closed length', () => {
    // Perimeter 4a·E(1 − b²/a²), a = 30, b = 20: 10 × 15.86543958929059 (complete elliptic integral, mpmath).
    const whole = lengthOf('M-30 0 A30 20 0 0 1 30 0 A30 20 0 0 1 -30 0 Z');
    expect(Math.abs(whole - 158.6543958929059)).toBeLessThan(0.01);
    const tilted = read('M0 0 A30 20 35 1 0 20 25').pieces;
    // Every point satisfies the ellipse's equation about one centre; the centre follows from the standard's
    // ends-to-centre rule (SVG 2, appendix B.2.4), worked here independently.
    const turn = (35 * Math.PI) / 180;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const [ux, uy] = [(c * -10 + s * -12.5) / 1, (-s * -10 + c * -12.5) / 1];
    const k = Math.sqrt((900 * 400 - 900 * uy * uy - 400 * ux * ux) / (900 * uy * uy + 400 * ux * ux));
    const [qx, qy] = [(k * 30 * uy) / 20, (-k * 20 * ux) / 30];
    const centre = { x: c * qx - s * qy + 10, y: s * qx + c * qy + 12.5 };
    for (const p of tilted) {
      const [dx, dy] = [p.to.x - centre.x, p.to.y - centre.y];
      const [vx, vy] = [(c * dx + s * dy) / 30, (c * dy - s * dx) / 20];
      expect(Math.abs(Math.hypot(vx, vy) - 1) * 20).toBeLessThan(0.002);
    }
    expect(tilted.at(-1)!.to).toEqual({ x: 20, y: 25 });
  });
});

describe('what is read and what is refused', () => {
  it('lines stay lines, relative or not, and Z closes', () => {
    const { pieces, closed } = read('m10 10 h10 v5 l-10 0 z');
    expect(closed).toBe(true);
    expect(pieces.map((p) => [p.from.x, p.from.y])).toEqual([
      [10, 10],
      [20, 10],
      [20, 15],
      [10, 15],
    ]);
    expect(read('M0 0 10 0 10 10').pieces).toHaveLength(2);
    expect(read('M0 0 L10 0').closed).toBe(false);
    expect(read('M5 5 M0 0 L10 0').pieces).toHaveLength(1);
    expect(read('M0 0 L10 0 L10 0 L 0 0 Z').pieces).toHaveLength(2);
  });

  const REFUSED = [
    ['', 'path data is empty'],
    ['   ', 'path data is empty'],
    ['L 10 10', 'path data must start with a move (M or m)'],
    ['5 M 0 0', 'path data must start with a move (M or m)'],
    ['M 0 0', 'path data draws nothing'],
    ['M 0 0 Z', 'path data draws nothing'],
    ['M 0 0 L 5', 'path data cannot be read: unterminated command at the path end'],
    ['M 0 0 X 5 5', 'path data cannot be read: unexpected character "X" at index 6'],
    ['M 0 0 L NaN 5', 'path data cannot be read: unexpected character "N" at index 8'],
    ['M 0 0 L 1e 5', 'path data cannot be read: invalid number ending at 10'],
    ['M 0 0 L 10 0 M 5 5 L 6 6', 'path data has more than one subpath; one is read'],
    ['M 0 0 L 10 0 L 5 5 Z L 6 6', 'path data goes on after Z; one subpath is read'],
    ['M 0 0 L 10 0 Z 5 L 6 6', 'a number follows Z, which takes none'],
    ['M 0 0 L 1e999 0', 'path data has a number that is not finite or is beyond 1000000'],
    ['M 0 0 A 5 5 0 2 0 10 10', 'path data cannot be read: expected a flag, got "2" at index "15"'],
  ] as const;
  for (const [d, expected] of REFUSED) it(`refuses "${d}"`, () => expect(reason(d)).toBe(expected));

  it('refuses too much', () => {
    expect(reason(`M0 0${' L1 1'.repeat(30_000)}`)).toMatch(/characters long/);
    expect(reason(`M0 0${'H1h2'.repeat(6_000)}`)).toMatch(/has 12001 commands/);
  });
});
