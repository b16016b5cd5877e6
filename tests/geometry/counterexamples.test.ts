/** Edges on which long runs of the property tests failed once, each named after its fault. */

import { expect, test } from 'vitest';
import { arc, line, openPath, type Piece, point, rollFoot } from '../../src/geometry/index.ts';
import { distanceToPieces } from './foot-checks.ts';

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
