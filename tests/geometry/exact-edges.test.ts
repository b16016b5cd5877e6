/**
 * Edges that are exactly as long, as wide or as round as the foot, but for the last digit: found by long runs of the
 * property tests. Points and arcs are written out, because as walked they differ in the digits that it takes.
 */

import { describe, expect, test } from 'vitest';
import { findEdgeFault } from '../../src/geometry/edge-fault.ts';
import {
  distance,
  line,
  openPath,
  type Piece,
  pieceAt,
  point,
  pointAlong,
  rollFoot,
} from '../../src/geometry/index.ts';
import { distanceTo } from './curve-helpers.ts';
import { coverage, deviation, selfCrossing, widestGap } from './foot-checks.ts';

const C = 6.35;

/** The next point, and of an arc its centre, radius, start and sweep. */
const step = (x: number, y: number, arc?: readonly [number, number, number, number, number]) => ({
  to: point(x, y),
  arc,
});

/** The edge from the origin through points. */
const edgeOf = (steps: readonly ReturnType<typeof step>[]): readonly Piece[] =>
  steps.map(({ to, arc }, i) => {
    const from = steps[i - 1]?.to ?? point(0, 0);
    if (!arc) return line(from, to);
    const [x, y, radius, start, sweep] = arc;
    return { kind: 'arc', center: point(x, y), radius, start, sweep, from, to };
  });

describe('is rolled along', () => {
  test.each([
    [
      // The concave arc is not entered, and its joint with the line, which turns by nothing, had an arc all the way round.
      'a thousandth of a millimetre of an arc of c − 1e-3 between two lines',
      1e-4,
      [
        step(18.41342230390042, 7.8067841687997666),
        step(21.175435648314462, 8.977801796881746),
        step(28.065786403839596, 11.899058837819878),
        step(
          28.06670704718849,
          11.899449242509997,
          [
            25.587567353075087, 17.744418650220467, 6.348999999999999, -1.1698039539888574,
            0.0001575051189163648,
          ],
        ),
        step(39.75848708781268, 16.85850958512147),
      ],
    ],
    [
      // The foot stands where the slot ends with less play than was asked for, at the clearance and at larger ones.
      'a slot of 2c with a piece of 1e-9 mm in its bottom',
      // A hair of 1e-8 mm across the slot is √(2c · 2e-8) along it.
      Math.sqrt(4e-8 * C),
      [
        step(11.697474618891027, 4.945612959017336),
        step(6.7518616598736925, 16.643087577908364),
        step(6.751861658952632, 16.643087577518944),
        step(-4.946534020932009, 11.69708520015838),
        step(-4.9474550819256224, 11.69669578181515),
      ],
    ],
    [
      // Led to the far end of the piece of 1e-9 mm, the arc of c is one of c + 6e-6: its parallel of 1e-9 mm begins on the
      // line's own and crosses it nowhere, so that the line was followed 6e-6 mm too far, and the needle came 1e-6 too near.
      'a piece of 1e-9 mm before an arc of c and one of c + 1e-6',
      1e-4,
      [
        step(11.69747462383664, 4.945612947319861),
        step(11.697474624757701, 4.9456129477092805),
        step(
          11.698395654695544,
          4.946002439495497,
          [9.224662302361695, 10.794347786818204, 6.35, -1.1707953267948965, 0.00015748031496062994],
        ),
        step(
          12.623914930644261,
          5.430805885443824,
          [9.224661906949041, 10.794348705343737, 6.350001, -1.170637845479936, 0.16472257352868147],
        ),
        step(
          13.54140834484989,
          5.816786197408075,
          [14.229860990680518, 2.8968490483501017, 3, 2.135677382638539, -0.3333333333333333],
        ),
      ],
    ],
    [
      // A kink of a millionth between lines of 1e-6 mm: their parallels overlap by 6e-6, which is 1e-12 deep. All were kept
      // to their ends, and the needle went back and forth.
      'three lines of a millionth of a millimetre',
      1e-4,
      [
        step(
          0.954060815703686,
          -0.09572537909320676,
          [0.38941834230865036, -0.9210609940028851, 1, 1.9707963267948965, -1],
        ),
        step(0.9540602510612125, -0.09572620442882167),
        step(0.9540596864195644, -0.09572702976500122),
        step(0.9540588610833849, -0.09572646512335316),
      ],
    ],
    [
      // The sign of the half turn at the corner is rounding, and the slow check took a way of 12 mm round it for the left.
      'a line back along an arc, on its left',
      1e-4,
      [
        step(
          0.0009210916530573612,
          0.0003893458162114846,
          [2.47280647365993, -5.84873731191832, 6.35, 1.9707963267948965, -0.00015748031496062994],
        ),
        step(0.0009210912637840727, 0.0003893467373337929),
        step(-0.9202012170408667, -0.3888839417676856),
        step(
          -0.9198120972799537,
          -0.3898051289378132,
          [-3.6835681419548187, -1.5567038072827435, 3, 6.683027826864626, -0.0003333333333333333],
        ),
      ],
    ],
    [
      // Led from the near end of the piece of 1e-9 mm, the last line turned by a thousandth, and at the edge's end the foot
      // stopped by up to a thousandth of the clearance too early.
      'a millionth of a millimetre that goes on 1e-9 mm aside',
      1e-6,
      [
        step(
          0.9684031421557725,
          0.2301528200947117,
          [1.168255026925951, -2.7631829820086553, 3, 1.9707963267948965, -0.3333333333333333],
        ),
        step(0.9684031420891552, 0.2301528210924903),
        step(0.968404139867756, 0.23015288770978523),
      ],
    ],
    [
      // The way goes from the first arc's parallel to the last one's, which cross 4e-9 mm after it begins; between lies the
      // corner's arc of 6e-9 mm, which made a step back, because the crossing lay a rounding too far from it.
      'a thousandth of a millimetre of an arc of c between two that bend away',
      1e-4,
      [
        step(
          0.9475422862876021,
          0.31638371100989154,
          [2.4786539739842643, -5.846261582409054, 6.350000001, 1.9717963267948966, -0.15748031493582987],
        ),
        step(
          0.9485127623782164,
          0.3166249083471058,
          [-0.5835755638124683, 6.479027472343573, 6.35, -1.3272756417307263, 0.00015748031496062994],
        ),
        step(
          1.9339223027552372,
          0.48064647591925586,
          [2.4806010824064977, -5.845777657181449, 6.35, 1.8144744911740274, -0.15748031496062992],
        ),
      ],
    ],
    [
      // Two kinks of a millionth to the left between arcs of 1e-6 mm: where their parallels cross lies a hair beyond the
      // end of each, and the needle went 6e-6 mm back.
      'arcs of c with kinks of a millionth between millionths of a millimetre',
      1e-4,
      [
        step(
          0.9478581961783805,
          0.3154360106778292,
          [2.47280647365993, -5.84873731191832, 6.35, 1.9707963267948965, -0.15748031496062992],
        ),
        step(
          0.9478591669143558,
          0.3154362508270878,
          [2.4728064736599302, -5.84873731191832, 6.35, 1.8133160118342666, -1.5748031496062992e-7],
        ),
        step(
          0.9478601376501287,
          0.3154364909771643,
          [2.472812637832731, -5.84873578696793, 6.35, 1.8133168543539517, -1.5748031496062992e-7],
        ),
        step(3.9977774663583636, -12.012905015001861, [
          2.4728188020042454,
          -5.84873426201235,
          6.35,
          1.8133176968736366,
          -Math.PI,
        ]),
      ],
    ],
    [
      // The parallel of the last arc has a radius of 1e-3 mm. Held back for the kink by 6e-6 mm along it, it began 2e-8 mm
      // beside the way, its crossing with the first one's was cut off, and the needle went 2.3e-6 mm too near.
      'an arc of c + 1e-3 after a millionth of a millimetre and a kink of a millionth',
      1e-4,
      [
        step(
          0.9478581961783805,
          0.3154360106778292,
          [2.47280647365993, -5.84873731191832, 6.35, 1.9707963267948965, -0.15748031496062992],
        ),
        step(
          0.9478591669119542,
          0.31543625083679516,
          [2.472868115316908, -5.848722062127337, 6.35, 1.8133260118342667, -1.5748031496062992e-7],
        ),
        step(
          5.588108469448384,
          8.004294173543563,
          [-0.5773961055107973, 6.4805637721413305, 6.351, -1.3282657992358413, 1.5705489962443069],
        ),
      ],
    ],
    [
      // Round three points as near as this the way goes on two circles that are one within rounding for half a thousandth
      // of a millimetre. Both were kept, the one as the end and the other as the start of a way, and those did not meet.
      'two kinks of 1e-5 between millionths of a millimetre',
      1e-4,
      [
        step(
          9.210609290998109e-7,
          3.8941849581880896e-7,
          [-1.1682550269259515, 2.7631829820086553, 3, -1.1707963267948966, 3.333333333333333e-7],
        ),
        step(
          9.219819938581787e-7,
          3.898079052574373e-7,
          [2.4727508568113095, -5.84876082602247, 6.35, 1.9707866601282298, -1.5748031496062994e-10],
        ),
        step(0.000001843050646304995, 7.792081331461808e-7),
      ],
    ],
    [
      // Back along the whole edge, 1e-9 mm aside and beyond its start. Within rounding the foot also touches a hair of the
      // first arc at the far end, by itself; the way along the left is the other one, round the outside of the last arc.
      'a line back past the start of the edge, and an arc of c − 1e-9 after it',
      1e-4,
      [
        step(
          0.9210610134738005,
          0.3894182962556002,
          [3894183.4230865035, -9210609.940028852, 10000000, 1.9707963267948965, -1e-7],
        ),
        step(0.9210610130843823, 0.3894182971766612),
        step(-10.776414105313496, -4.556193480395712),
        step(
          -7.573208593854801,
          4.139541530556765,
          [-13.249219999559003, 1.2925440754093591, 6.349999999, 5.11238888138469, -4.6474747416911155],
        ),
      ],
    ],
  ] as const)('%s', (_, most, steps) => {
    const pieces = edgeOf(steps);
    const rolled = rollFoot(openPath(pieces), C);
    if (!rolled.ok) throw new Error(rolled.fault.kind);
    const { path } = rolled.value;
    expect(deviation(path.pieces, pieces, C)).toBeLessThan(1e-6);
    expect(widestGap(path.pieces)).toBeLessThan(1e-6);
    expect(selfCrossing(path.pieces)).toBeUndefined();
    expect(findEdgeFault(path)).toBeUndefined();
    const seen = coverage(path.pieces, pieces, C);
    expect(seen.extra).toBe(0);
    expect(seen.missing).toBeLessThan(most);
    rolled.value.contacts.forEach(({ from, to }, i) => {
      for (const t of [0, 0.5, 1]) {
        const touched = pointAlong(openPath(pieces), from + t * (to - from))!;
        expect(Math.abs(distance(pieceAt(path.pieces[i]!, t), touched) - C)).toBeLessThan(2e-6);
      }
    });
  });
});

test('an edge that folds back on itself within 1e-9 mm is said to touch itself, and where', () => {
  // Between the two sides lay a piece of 1e-9 mm, which is left out: then the line lies on the arc, and no foot is between.
  const pieces = edgeOf([
    step(
      -0.0003894183422625973,
      0.0009210609940223561,
      [9210609.940028852, 3894183.423086503, 10000000, 3.541592653589793, -1e-10],
    ),
    step(-0.00038941926332359135, 0.0009210606046040139),
    step(4.9452235268867915, -11.696553563726596),
    step(
      5.260659538417693,
      -12.644411759621084,
      [-0.9035137828060016, -14.169360042650391, 6.35, 6.683185308079587, -0.15748031496062992],
    ),
  ]);
  expect(rollFoot(openPath(pieces), C)).toEqual({
    ok: false,
    fault: { kind: 'crosses-itself', at: point(0, 0), pieces: [0, 2] },
  });
});

test('an edge whose last millionth of a millimetre lies 1e-9 mm beside it is said to touch itself', () => {
  // The piece of 1e-9 mm is left out here too. The line was led from its near end, and turned away from the arc by a
  // thousandth: the foot went round between the two, 6.35e-3 mm from where it can go by the edge as it was given.
  const pieces = edgeOf([
    step(
      -0.751093851102644,
      0.5960313876798099,
      [-0.9210609940028851, -0.3894183423086504, 1, 0.3999999999999999, 1],
    ),
    step(-0.7510938509326769, 0.5960313886652596),
    step(-0.7510928654829468, 0.5960312186981167),
  ]);
  const rolled = rollFoot(openPath(pieces), C);
  if (rolled.ok || rolled.fault.kind !== 'crosses-itself') throw new Error('it does touch itself');
  expect(rolled.fault.pieces).toEqual([0, 2]);
  for (const i of [0, 2]) expect(distanceTo(rolled.fault.at, pieces[i]!)).toBeLessThan(2e-9);
});

test('circles that overlap by a millionth of a millimetre do not cross midway between their crossings', () => {
  // The second arc goes back 1e-6 mm to the left of the first. Their circles overlap by that, and cross 0.04 mm to either
  // side of the arcs; midway, 1e-6 mm from one of them, was said to be where the edge crosses itself.
  const pieces = edgeOf([
    step(
      0.0009210607989041415,
      0.0003894188037601434,
      [-389.4183432297115, 921.0609936134667, 1000, -1.1707963257948966, 0.000001],
    ),
    step(0.000920671379639851, 0.00039033986436433804),
    step(
      -3.8961202652391513e-7,
      9.215165293212954e-7,
      [38941.83524364256, -92106.0989710068, 100000, 1.970796327794897, 1e-8],
    ),
  ]);
  // The arc that goes back covers all of the first one, and turns its own left side to it.
  expect(rollFoot(openPath(pieces), C)).toMatchObject({ ok: false, fault: { kind: 'trapped' } });
});

test('an edge that goes back across itself within a hair is said to cross itself', () => {
  // The arc starts 1e-9 mm to the right of the line and crosses it 4.5e-5 mm farther on: √(2 · 1e-9), its radius being 1.
  // Asked only after the piece of 1e-9 mm was left out, it was a point, and what the foot touches of it was not said.
  const corner = point(11.69747462383664, 4.945612947319861);
  const rolled = rollFoot(
    openPath(
      edgeOf([
        step(corner.x, corner.y),
        step(11.697474624226059, 4.945612946398801),
        step(
          11.603576488578748,
          4.91133745127608,
          [11.308056281917409, 5.866673940401686, 1, -1.1707963267948966, -0.1],
        ),
        step(
          11.60387153106795,
          4.910381967186086,
          [10.648239999453141, 4.615817244614741, 1, 0.2999999999999998, -0.001],
        ),
      ]),
    ),
    C,
  );
  if (rolled.ok || rolled.fault.kind !== 'crosses-itself') throw new Error('it does cross itself');
  expect(rolled.fault.pieces).toEqual([0, 2]);
  const { at } = rolled.fault;
  expect(Math.hypot(at.x - corner.x, at.y - corner.y)).toBeCloseTo(Math.sqrt(2e-9), 7);
});

test('the slow check knows places on a nearly straight arc as well as the program does', () => {
  // The edge ends 1e-9 mm to the left of an arc of 10 km, and so keeps the foot off the arc's last 1.1e-4 mm: √(2c · 1e-9).
  // From its centre the arc's end was known to a nanometre only, and the check took the foot to go on to it.
  const pieces = edgeOf([
    step(
      -0.0003894844808426202,
      0.0009210330273469791,
      [
        -6.413327689438857, -2.7115114566404315, 6.962978273096611, 0.3999999999999999,
        0.00014361670549278835,
      ],
    ),
    step(
      -0.0007790350989263584,
      0.0018420380848524075,
      [-9210050.575638546, -3895506.1794558465, 10000000, 0.4001436167054926, 1e-10],
    ),
    step(-0.0007794255703546169, 0.0018429586998988377),
  ]);
  const rolled = rollFoot(openPath(pieces), C);
  if (!rolled.ok) throw new Error(rolled.fault.kind);
  expect(rolled.value.contacts.at(-1)!.to).toBeCloseTo(0.002001 - Math.sqrt(2 * C * 1e-9), 7);
  expect(coverage(rolled.value.path.pieces, pieces, C).missing).toBeLessThan(1e-6);
});
