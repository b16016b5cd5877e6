/** Piano keys: lines square to the seam, from edge to edge, that turn at the mitre; across a band, square to its middle. */

import {
  add,
  clipperOf,
  directionAlong,
  distanceToPiece,
  leftOf,
  line,
  movePath,
  openPath,
  type Path,
  pathLength,
  pointAlong,
  polyline,
  type Region,
  reversePath,
  scale,
} from '../geometry/index.ts';
import { type Axis, checked, type Fill, type FillContext, MOST_ELEMENTS, nothing, TOO_FINE } from './fill.ts';
import { anchorOf, evenOffsets, parallelLines, reachAcross } from './parallel.ts';
import { linesOnSides } from './sides.ts';
import { mirrorOf, offAxis } from './symmetry.ts';

const UPRIGHT = Math.PI / 2;

export const pianoKeys: Fill = checked({
  name: 'piano keys',
  about: 'lines square to the seam, turning at the mitre',
  suits: 'area',
  sewn: 'sew key after key, each back beside the one before; between two keys the needle travels along the edge, and at the mitre it goes on with the other side',
  crowd: 0.1,
  takes: [],
  fill: (region, { spacing, turn = 0 }, context) => {
    const paths = context?.sides
      ? linesOnSides(region, context.sides, [UPRIGHT], spacing)
      : context?.spine
        ? acrossBand(region, context.spine, spacing)
        : inArea(region, UPRIGHT + turn, spacing, context);
    if (!paths) return nothing(TOO_FINE);
    if (paths.length === 0) return nothing('the area is too small for a line at this spacing');
    return { paths, continuous: false, messages: [] };
  },
});

/** Where a mirror does not stand upright, the area goes round a corner: each side of it has keys of its own. */
const inArea = (
  region: Region,
  angle: number,
  spacing: number,
  context: FillContext | undefined,
): Path[] | undefined => {
  const anchor = anchorOf(region, context);
  const offsets = evenOffsets(reachAcross(region, anchor, angle), spacing)?.map((d) => d + spacing / 2);
  if (!offsets) return undefined;
  const whole = parallelLines(region, anchor, angle, offsets);
  const axis = context?.axis;
  if (!axis || Math.abs(Math.sin(axis.angle - angle)) < 1e-6) return whole;
  const own = whole.flatMap((path) => beside(path, axis));
  const clip = clipperOf(region, 'left out');
  return [...own, ...own.flatMap((path) => clip(movePath(reversePath(path), mirrorOf(axis))))];
};

/** What of a straight line lies on the left of an axis. */
const beside = (path: Path, axis: Axis): Path[] => {
  const [a, b] = [path.pieces[0]!.from, path.pieces.at(-1)!.to];
  const [da, db] = [offAxis(a, axis), offAxis(b, axis)];
  if (da <= 0 && db <= 0) return [];
  if (da > 0 && db > 0) return [path];
  const at = add(scale(a, db / (db - da)), scale(b, -da / (db - da)));
  return [polyline(da > 0 ? [a, at] : [at, b])];
};

const acrossBand = (region: Region, spine: Path, spacing: number): Path[] | undefined => {
  const length = pathLength(spine);
  const count = Math.round(length / spacing);
  if (!(count < MOST_ELEMENTS)) return undefined;
  const clip = clipperOf(region, 'left out');
  return Array.from({ length: count }, (_, k) => ((k + 0.5) * length) / count).flatMap((s, k) => {
    const at = pointAlong(spine, s)!;
    const left = leftOf(directionAlong(spine, s)!);
    const reach = scale(left, (k % 2 === 0 ? 1 : -1) * REACH * spacing);
    const ray = openPath([line(add(at, scale(reach, -1)), add(at, reach))]);
    // Of a bent band the line may cross another stretch: only the key itself is kept.
    return clip(ray).filter((part) => part.pieces.some((p) => distanceToPiece(p, at) < spacing / 50));
  });
};

/** Half a band is no wider than this many spacings. */
const REACH = 40;
