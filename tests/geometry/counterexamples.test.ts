/** Edges on which long runs of the property tests failed once, each named after its fault. */

import { expect, test } from 'vitest';
import { crossings } from '../../src/geometry/crossing.ts';
import { arc, distance, line, openPath, type Piece, point, rollFoot } from '../../src/geometry/index.ts';
import { coverage, distanceToPieces, selfCrossing } from './foot-checks.ts';

test('a speck of a large arc does not reach to the other side of its circle', () => {
  // A thousandth of a millimetre of an arc of 1000 mm, before a concave arc of exactly the clearance: the unreached
  // stretch was cut a rounding error before the joint, and its deepest place was said to be 2 m away.
  // Ends are written out: as walked, they differ from the arcs' own by a rounding error, and it takes that.
  const [a, b, c, d] = [
    point(11.697474618891027, 4.945612959017336),
    point(11.698395680079349, 4.946002376900036),
    point(11.699316710795785, 4.946391866845112),
    point(12.667683826479418, 5.176696221118495),
  ];
  const pieces: Piece[] = [
    line(point(0, 0), a),
    {
      ...arc(point(401.11581784860243, -916.1153806544494), 1000, 1.9707963277948966, -1e-6),
      from: a,
      to: b,
    },
    {
      ...arc(point(9.225595049309227, 10.794742159149104), 6.35, -1.1707973257948965, 0.00015748031496062994),
      from: b,
      to: c,
    },
    {
      ...arc(point(12.868004109923293, 2.183391728748738), 3, 1.9709528081098573, -0.3333333333333333),
      from: c,
      to: d,
    },
  ];
  const rolled = rollFoot(openPath(pieces), 6.35);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  for (const u of rolled.value.unreached) {
    expect(distanceToPieces(u.deepest, pieces)).toBeLessThan(1e-6);
    expect(u.away).toBeLessThan(6.36);
  }
});

test('past a concave arc of nearly the clearance the foot does not step back', () => {
  // A thousandth of a millimetre of an arc of 6.349 mm between two lines tangent to it. Beyond their crossing the
  // offset lines lie deeper than the clearance by 6e-12 mm, which is rounding, so both were kept to their ends, and a
  // line of 1.6e-7 mm led back from one to the other.
  const [c, r, start, sweep] = [6.35, 6.35 - 1e-3, 0.4 - Math.PI / 2, 1e-3 / (6.35 - 1e-3)];
  const bend = arc(point(0, 0), r, start, sweep);
  const along = (angle: number, length: number) => point(length * Math.cos(angle), length * Math.sin(angle));
  const { from, to } = bend;
  const [back, ahead] = [along(0.4, -12.7), along(0.4 + sweep, 1)];
  const pieces: Piece[] = [
    line(point(from.x + back.x, from.y + back.y), from),
    bend,
    line(to, point(to.x + ahead.x, to.y + ahead.y)),
  ];
  const rolled = rollFoot(openPath(pieces), c);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  const { path, contacts } = rolled.value;
  expect(path.pieces.map((p) => p.kind)).toEqual(['line', 'line']);
  expect(selfCrossing(path.pieces)).toBeUndefined();
  // The two offset lines are tangent to the circle of radius c − r: from where it is touched to where they cross it is
  // (c − r)·tan(sweep / 2) on either side.
  const short = (c - r) * Math.tan(sweep / 2);
  expect(12.7 - contacts[0]!.to).toBeCloseTo(short, 10);
  expect(contacts[1]!.from - 12.701).toBeCloseTo(short, 10);
});

test('a point a millionth of a millimetre before a kink keeps the foot off the line that follows', () => {
  // The edge's first point lies to the left of the second line by 1e-9 mm, so that the foot rolls round it before it
  // touches the line. The stitching was right; the slow check took centres that overlap the point by up to 1e-9 mm for
  // free, and said that it left out 1.1e-4 mm.
  const c = 6.35;
  const kink = 1e-3;
  const speck = 1e-6;
  const along = (from: { x: number; y: number }, angle: number, length: number) =>
    point(from.x + length * Math.cos(angle), from.y + length * Math.sin(angle));
  const first = point(0, 0);
  const joint = along(first, 0.4, speck);
  const pieces: Piece[] = [line(first, joint), line(joint, along(joint, 0.4 + kink, 1))];
  const rolled = rollFoot(openPath(pieces), c);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  const { path, contacts } = rolled.value;
  // The centre at c from the point and from the line: by Pythagoras √(h(2c − h)) beyond the point's foot on the line,
  // with h the height of the point over it.
  const h = speck * Math.sin(kink);
  expect(contacts[0]!.from - speck).toBeCloseTo(Math.sqrt(h * (2 * c - h)) - speck * Math.cos(kink), 8);
  expect(coverage(path.pieces, pieces, c).missing).toBeLessThan(1e-6);
});

test('a speck at the end of an edge does not turn the short line before it', () => {
  // A thousandth of a millionth of a millimetre, square to a line of 1e-6 mm: led to the speck's far end, the line
  // turned by a thousandth, and the foot was stopped 6.3e-3 mm too early. The foot goes along the line alone.
  const angle = 0.4 + Math.PI / 2;
  const end = point(1e-6 * Math.cos(angle), 1e-6 * Math.sin(angle));
  const past = point(end.x + 1e-9 * Math.cos(0.4), end.y + 1e-9 * Math.sin(0.4));
  const rolled = rollFoot(openPath([line(point(0, 0), end), line(end, past)]), 6.35);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  // At the clearance to the left of the line, from end to end.
  const { from, to } = rolled.value.path.pieces[0]!;
  expect(rolled.value.path.pieces).toHaveLength(1);
  expect(from.x).toBeCloseTo(-6.35 * Math.sin(angle), 9);
  expect(from.y).toBeCloseTo(6.35 * Math.cos(angle), 9);
  expect(to.x - from.x).toBeCloseTo(end.x, 9);
  expect(to.y - from.y).toBeCloseTo(end.y, 9);
});

test('an edge that begins with a hair of a wider arc before one of exactly the clearance is rolled along', () => {
  // The edge's other side is concave there. A thousandth of a millimetre of its arc of c + 1e-3 leaves the foot a way
  // of 1.6e-7 mm, at the middle of which it is stuck with the play that is looked for; the way round the heel took
  // over from it that it is stuck as well, no loop was left, and the edge was refused as too tangled.
  // Ends are written out: as walked, they differ from the arcs' own by a rounding error.
  const c = 6.35;
  const [a, b, d, e] = [
    point(0.0009210916482305232, 0.00038934582763137216),
    point(8.59762543315548, -7.524772599280459),
    point(8.333682858562286, -8.489310995259133),
    point(8.334647264826232, -8.489575420058895),
  ];
  const wider = arc(
    point(2.4731958920022383, -5.849658372912323),
    c + 1e-3,
    Math.PI / 2 + 0.4,
    -1e-3 / (c + 1e-3),
  );
  const exact = arc(point(2.4728066186908944, -5.84873725061367), c, 1.9706388712760807, -2.2377463268463913);
  const last = arc(point(8.06974028396909, -9.453849391237808), 1, 1.303688871224586, -1e-3);
  const pieces: Piece[] = [
    { ...wider, from: point(0, 0), to: a },
    { ...exact, from: a, to: b },
    line(b, d),
    { ...last, from: d, to: e },
  ];
  const rolled = rollFoot(openPath(pieces), c);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  // Round the outside of both arcs at the sum of the radii, from the heel's own normal on.
  const [first, second] = rolled.value.path.pieces;
  expect(first).toMatchObject({ kind: 'arc', radius: expect.closeTo(2 * c + 1e-3, 12) });
  expect(second).toMatchObject({ kind: 'arc', radius: expect.closeTo(2 * c, 12) });
  expect(second!.kind === 'arc' && second!.sweep).toBeCloseTo(exact.sweep, 12);
  expect(first!.from.x).toBeCloseTo(c * Math.cos(Math.PI / 2 + 0.4), 12);
  expect(first!.from.y).toBeCloseTo(c * Math.sin(Math.PI / 2 + 0.4), 12);
  expect(coverage(rolled.value.path.pieces, pieces, c).missing).toBeLessThan(1e-6);
});

test.each([
  [
    'before an arc of exactly the clearance, turned by a millionth',
    [
      line(point(0, 0), point(0.9210609940028851, 0.3894183423086505)),
      {
        ...arc(point(3.393873316398891, -5.459316496800271), 6.35, 1.9707973267948966, -3.1101106479556764),
        from: point(0.9210609940028851, 0.3894183423086505),
        to: point(6.049559806196408, -11.227316953449607),
      },
    ],
  ],
  [
    'after a millionth of a millimetre of a line',
    [
      {
        ...arc(
          point(-2.928422319655779, 6.926370106481959),
          7.519990700408148,
          -1.1707963257948966,
          0.28092184575082824,
        ),
        from: point(0, 0),
        to: point(1.8054837145548173, 1.083391945176755),
      },
      line(point(1.8054837145548173, 1.083391945176755), point(1.8054844915466206, 1.083392574687468)),
    ],
  ],
] as const)('the way round an end is looked at for itself %s', (_, pieces) => {
  // A corner or a line of some millionths of a millimetre on the other side is stuck with the play that is looked for;
  // what followed took over from it that it is stuck too, and the edge was refused as too tangled.
  const rolled = rollFoot(openPath([...pieces]), 6.35);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  expect(selfCrossing(rolled.value.path.pieces)).toBeUndefined();
  // The line's kink of 1.5e-6 keeps the foot off its end by c times that, which the slow check counts.
  expect(coverage(rolled.value.path.pieces, pieces, 6.35).missing).toBeLessThan(1e-5);
});

test('a line beside an arc with a radius of 100 m does not cross it midway between where it would', () => {
  // The third line runs 1.2e-5 mm inside the arc's circle, and would leave it a millimetre on either side. Midway
  // between, which is the surest point of a near tangency, was said to be where the edge crosses itself.
  const [a, b, c] = [
    point(0.09210607992935603, 0.03894188028390826),
    point(0.09118056691306259, 0.03856316448456606),
    point(1.0122411714971449, 0.42798242785401586),
  ];
  const wide = arc(point(-38941.834230865046, 92106.09940028851), 1e5, 0.4 - Math.PI / 2, 1e-6);
  const pieces: Piece[] = [{ ...wide, from: point(0, 0), to: a }, line(a, b), line(b, c)];
  const rolled = rollFoot(openPath(pieces), 6.35);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  expect(coverage(rolled.value.path.pieces, pieces, 6.35).missing).toBeLessThan(1e-4);
});

test('where two circles touch with a hair between them is said as near to both as that hair', () => {
  // Radii that differ by a thousandth, touching from inside but for 1e-9 mm: the radical line, on which the place was
  // said to be, lies 6.35e-6 mm off both circles.
  const [r, gap] = [6.35, 1e-9];
  const inner = arc(point(1e-3 - gap, 0), r - 1e-3, -0.5, 1);
  const outer = arc(point(0, 0), r, -0.5, 1);
  for (const [a, b] of [
    [inner, outer],
    [outer, inner],
  ] as const) {
    const met = crossings(a, b, 2 * gap);
    expect(met.length).toBeGreaterThan(0);
    for (const { point: at } of met) {
      expect(distanceToPieces(at, [inner])).toBeLessThan(2 * gap);
      expect(distanceToPieces(at, [outer])).toBeLessThan(2 * gap);
    }
  }
});

test('an edge that leaves a slot of 2c and 1e-9 mm is rolled along, and not refused', () => {
  // Where the slot begins, its two sides' parallels are farther apart than what touches, and nearer than what a foot
  // gets through: nothing was cut there, all on the far side was left out, and a loop of 1e-9 mm was all that was left.
  const [a, b, d, e] = [
    point(8.771626513226838, 3.7085842174357655),
    point(3.8260135538200855, 15.406058837247853),
    point(3.8260135528990245, 15.406058836858435),
    point(-7.870540004998391, 10.460835296184332),
  ];
  const pieces: Piece[] = [line(point(0, 0), a), line(a, b), line(b, d), line(d, e)];
  const rolled = rollFoot(openPath(pieces), 6.35);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  const { path } = rolled.value;
  // The slot is closed: all that the foot reaches of the left side is the last wall beyond the first one's start. There
  // it goes along tangent to its way round that start: a hair of 1e-8 mm across the slot is √(2c · 2e-8) along it.
  expect(path.pieces).toHaveLength(1);
  expect(distance(path.pieces[0]!.from, point(-2.472806479508668, 5.848737309445513))).toBeLessThan(
    Math.sqrt(4e-8 * 6.35),
  );
  expect(coverage(path.pieces, pieces, 6.35)).toMatchObject({ extra: 0, missing: expect.closeTo(0, 3) });
});
