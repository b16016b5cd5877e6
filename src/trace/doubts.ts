/** What a person should look at before she relies on a traced edge: one sentence for each doubt. */

import { distance, flatten, type Path, type Point, pieceDirection, turnBetween } from '../geometry/index.ts';
import type { Capture } from './capture-marks.ts';
import { DEVIANT, type Outline } from './fit-outline.ts';
import type { Level, WorkingEdge } from './working-edge.ts';

/** A photograph by which an outline may be off by more than this (mm) is not measured. */
export const MOST_EXPECTED = 1;
/** By more than this (mm) it is unsure. */
const SURE = 0.3;

const BETTER_PHOTO =
  'press the sheet flat, go farther away and zoom in, hold the camera level, give it more light, and do not cut the picture';

/** An older sheet has only these; on a newer one the other two may be covered. */
const SIX_SEEN =
  'uncover the two marks on the long sides between the corners, or if the sheet has none there print the capture sheet again, for eight marks tell more than six; ';

/** What to do for a better one. */
export const betterPhoto = ({ old }: Capture): string => `${old ? SIX_SEEN : ''}${BETTER_PHOTO}`;

export const photoDoubt = (capture: Capture | undefined): string | undefined =>
  capture && capture.expected > SURE
    ? `unsure: the outline may be ${capture.expected.toFixed(1)} mm off in this photograph; for a better one ${betterPhoto(capture)}`
    : undefined;

/** Two marks tell nothing of the camera's tilt, by which what is farther away looks smaller. */
export const marksDoubt = ({ byMarks }: { readonly byMarks: boolean }): string | undefined =>
  byMarks
    ? 'unsure: two marks tell the size along one line only, so in a photograph that was not taken from straight above and from far away the outline is off elsewhere: print it and lay the template on it, or use the sheet for photographs'
    : undefined;

export const touchedDoubt = ({ touched }: { readonly touched: Point | undefined }): string | undefined =>
  touched
    ? `unsure: other lines touch the line round the template, as near ${Math.round(touched.x)},${Math.round(touched.y)} in the picture, so its outer side was taken: look at it there`
    : undefined;

/** By what share the outline of acrylic is too large, seen from so near (mm) as a hand holds a camera. */
const USUAL_HEIGHT = 400;

/** What acrylic is thick where nobody says (mm): for a longarm's ruler foot (common practice). */
const USUAL_THICKNESS = 6.35;

/**
 * Acrylic by itself, and no line round it, is seen by its upper edge; `thickness` in mm where it is known. A line that
 * encloses what is darker than the paper is its rim.
 */
export const raisedDoubt = (
  {
    kind,
    source,
    lowered,
    hasBody,
  }: {
    readonly kind: string;
    readonly source: string;
    readonly lowered: number;
    readonly hasBody: boolean;
  },
  thickness: number | undefined,
): string | undefined => {
  if (source !== 'capture-sheet' || lowered !== 0) return undefined;
  if (!(hasBody || (kind === 'solid' && thickness !== undefined))) return undefined;
  const high = thickness ?? USUAL_THICKNESS;
  const lay = hasBody
    ? 'inside the line it is darker than the paper, so the acrylic itself lay on the sheet:'
    : 'if the acrylic itself lay on the sheet,';
  return `unsure: ${lay} its upper edge is nearer to the camera than the sheet, and from ${USUAL_HEIGHT} mm looks ${((100 * high) / (USUAL_HEIGHT - high)).toFixed(1)} % too large: say how high the camera was, or draw round the acrylic and photograph the line`;
};

/**
 * Line art coarser than this (mm a pixel) does not show every edge to a tenth of a millimetre. What is ink the scanner
 * decides at a grey of its own, within the pixel or so by which it blurs: that moves the whole outline in or out by up
 * to half a pixel, a sharp corner by several times as much, and no trace of it is left in two greys. So what tells is
 * how large a pixel is; how rough the outline is tells nothing of it.
 */
const COARSE = 0.1;

export const lineArtDoubt = ({
  lineArt,
  pixelsPerMm,
}: {
  readonly lineArt: boolean;
  readonly pixelsPerMm: number;
}): string | undefined =>
  lineArt && 1 / pixelsPerMm > COARSE
    ? `unsure: line art of ${Math.round(pixelsPerMm * 25.4)} dots per inch leaves the outline some tenths of a millimetre off at sharp corners: scan in grey, or at 300 dots per inch`
    : undefined;

/** A place where the outline leaves the picture: a corner that was not found, most often. */
export const outlineDoubt = (
  { deviation, farthest }: Outline,
  toPixels: (p: Point) => Point,
): string | undefined => {
  if (!farthest || !(deviation > DEVIANT)) return undefined;
  const { x, y } = toPixels(farthest);
  return `unsure: near ${Math.round(x)},${Math.round(y)} in the picture the outline is ${deviation.toFixed(1)} mm off, as where a corner was not found: look at it there; a sharper picture with more pixels helps`;
};

/** An end at a corner that turns by less than this (radians) may as well be somewhere near it. */
const SHALLOW = (25 * Math.PI) / 180;
/** A straight stretch this long (mm), within this angle (radians) of square to the back, may be the end's own side. */
const LONG_END = 12;
const SQUARE_WITHIN = (40 * Math.PI) / 180;
/** What is straight leaves its chord by no more than this (mm). */
const STRAIGHT = 0.15;
const SAY = 'if the edge ends elsewhere, say where with --heel and --crown';

/** How the edge was laid, which may be another way than it was drawn. */
export const levelWords = ({ level, skew }: WorkingEdge, asked?: Level): string => {
  const degrees = Math.abs((skew * 180) / Math.PI).toFixed(1);
  switch (level) {
    case 'back':
      return `laid level by the long straight side, which was turned by ${degrees}°`;
    case 'ends':
      return `${asked === 'ends' ? '' : 'no long straight side: '}laid level by the line from heel to crown end, which was turned by ${degrees}°`;
    case 'picture':
      return 'laid as it lies in the picture';
    default:
      return level satisfies never;
  }
};

/** Whether an end of the edge may be at the wrong place of the outline; `said`: a person has said where they are. */
export const endDoubts = (outline: Path, found: WorkingEdge, said: boolean): readonly string[] => {
  if (said) return [];
  const points = flatten(found.edge, 0.02);
  return [
    { name: 'heel', at: found.heel, way: points },
    { name: 'crown end', at: found.crown, way: [...points].reverse() },
  ].flatMap(({ name, at, way }) => {
    const turned = turnAt(outline, at);
    const long = found.level === 'ends' ? 0 : squareStart(way);
    if (turned < SHALLOW)
      return [
        `unsure: the ${name} is put at a corner of only ${Math.round((turned * 180) / Math.PI)}°: look at it in the picture; ${SAY}`,
      ];
    return long < LONG_END
      ? []
      : [
          `unsure: at the ${name} ${long.toFixed(0)} mm of the edge are straight and about square to the long side, as a cut end is: look at it in the picture; ${SAY}`,
        ];
  });
};

/** By how much the outline turns at one of its joints; infinite where it has none there, radians. */
const turnAt = ({ pieces }: Path, at: Point): number => {
  const i = pieces.findIndex((p) => distance(p.from, at) < 1e-6);
  const before = pieces.at(i - 1);
  return i < 0 || !before
    ? Number.POSITIVE_INFINITY
    : Math.abs(turnBetween(pieceDirection(before, 1), pieceDirection(pieces[i]!, 0)));
};

/** How far a way is straight from its start and about square to the template's axis, mm. */
const squareStart = (way: readonly Point[]): number => {
  const from = way[0]!;
  let long = 0;
  for (let i = 1; i < way.length; i++) {
    const to = way[i]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const c = Math.hypot(dx, dy);
    if (!(c > 0)) continue;
    const off = Math.max(
      ...way.slice(1, i).map((p) => Math.abs(dx * (p.y - from.y) - dy * (p.x - from.x)) / c),
      0,
    );
    if (off > STRAIGHT) break;
    if (Math.abs(Math.abs(Math.atan2(dy, dx)) - Math.PI / 2) <= SQUARE_WITHIN) long = c;
    else long = 0;
  }
  return long;
};
