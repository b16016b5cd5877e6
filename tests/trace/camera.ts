/**
 * A camera of our own that photographs the capture sheet: a pinhole, tilted, with a lens that bends lines (radial
 * distortion k1 and k2 as in D. C. Brown, "Close-range camera calibration", Photogrammetric Engineering 37, 1971), paper that
 * need not lie flat, light from one side, a blur and noise. It shares no code with what it tests: the sheet's
 * measures are written here once more, as a ruler reads them off the printed sheet.
 */

import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Shot {
  /** From the sheet's middle to the lens, mm. */
  readonly away: number;
  /** Pixels of the picture. */
  readonly width: number;
  readonly height: number;
  /** Focal length, pixels. */
  readonly focal: number;
  /** How far the sheet leans back, about which of its own directions, and how the camera is turned (radians). */
  readonly tilt: number;
  readonly axis: number;
  readonly turn: number;
  /** Brown's, over the focal length squared, and to the fourth power. */
  readonly k1: number;
  readonly k2?: number;
  /** Where the lens's own middle lies off the picture's, pixels: a picture that was cut. */
  readonly offCentre?: Place;
  /** How the picture shows the sheet off its middle, mm. */
  readonly aim?: Place;
  /** How high the paper stands over the table, by place from its middle (mm); flat unless given. */
  readonly lift?: ((p: Place) => number) | undefined;
}

/** The sheet's marks, mm from its middle, y up. The first six are those of the older sheet. */
export const SHEET_MARKS: readonly Place[] = [
  { x: -85, y: 119 },
  { x: 85, y: 119 },
  { x: 85, y: -119 },
  { x: -85, y: -119 },
  { x: 0, y: 119 },
  { x: -42.5, y: -119 },
  { x: -85, y: 0 },
  { x: 85, y: 59.5 },
];

/** Half of the field inside the marks, mm. */
export const SHEET_FIELD = { x: 77, y: 111 } as const;

interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** From the sheet's frame to the camera's, z away from the lens. */
const seenFrom = (shot: Shot, { x, y, z }: Vector): Vector => {
  const [ca, sa, ct, st] = [
    Math.cos(shot.axis),
    Math.sin(shot.axis),
    Math.cos(shot.tilt),
    Math.sin(shot.tilt),
  ];
  const [cr, sr] = [Math.cos(shot.turn), Math.sin(shot.turn)];
  const [px, py] = [x - (shot.aim?.x ?? 0), y - (shot.aim?.y ?? 0)];
  const along = ca * px + sa * py;
  const across = -sa * px + ca * py;
  const flat = ct * across - st * z;
  const high = st * across + ct * z;
  const [qx, qy] = [ca * along - sa * flat, sa * along + ca * flat];
  return { x: cr * qx - sr * qy, y: sr * qx + cr * qy, z: shot.away - high };
};

const bent = (shot: Shot, r2: number): number => 1 + shot.k1 * r2 + (shot.k2 ?? 0) * r2 * r2;

/** Where a place on the sheet comes to lie in the picture, pixels, y down. */
export const pictured = (shot: Shot, p: Place): Place => {
  const { x, y, z } = seenFrom(shot, { ...p, z: shot.lift?.(p) ?? 0 });
  const [u, v] = [x / z, y / z];
  const k = shot.focal * bent(shot, u * u + v * v);
  return {
    x: shot.width / 2 + (shot.offCentre?.x ?? 0) + k * u,
    y: shot.height / 2 + (shot.offCentre?.y ?? 0) - k * v,
  };
};

/** The sheet's place that a pixel shows; writes into `into`, for there are millions. */
const shownAt = (shot: Shot): ((x: number, y: number, into: { x: number; y: number }) => void) => {
  const [ca, sa, ct, st] = [
    Math.cos(shot.axis),
    Math.sin(shot.axis),
    Math.cos(shot.tilt),
    Math.sin(shot.tilt),
  ];
  const [cr, sr] = [Math.cos(shot.turn), Math.sin(shot.turn)];
  const [cx, cy] = [shot.width / 2 + (shot.offCentre?.x ?? 0), shot.height / 2 + (shot.offCentre?.y ?? 0)];
  const [ax, ay] = [shot.aim?.x ?? 0, shot.aim?.y ?? 0];
  return (x, y, into) => {
    const [dx, dy] = [(x - cx) / shot.focal, (cy - y) / shot.focal];
    const rd = Math.hypot(dx, dy);
    let r = rd;
    for (let i = 0; i < 12; i++) r = rd / bent(shot, r * r);
    const k = rd > 0 ? r / rd : 1;
    const [u, v] = [dx * k, dy * k];
    const [qu, qv] = [cr * u + sr * v, -sr * u + cr * v];
    const along = ca * qu + sa * qv;
    const across = -sa * qu + ca * qv;
    let lift = 0;
    for (let i = 0; i < (shot.lift ? 6 : 1); i++) {
      // ct·w − st·lift = across·depth and depth = away − st·w − ct·lift, for the place w across the axis.
      const w = (across * (shot.away - ct * lift) + st * lift) / (ct + across * st);
      const depth = shot.away - st * w - ct * lift;
      const h = along * depth;
      into.x = ca * h - sa * w + ax;
      into.y = sa * h + ca * w + ay;
      if (shot.lift) lift = shot.lift(into);
    }
  };
};

export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** Pixels of the drawn sheet to the mm, and its size (mm). */
export const SHEET_PER_MM = 12;
const SHEET = { width: 210, height: 280 };

/** The sheet with its marks, and what `draw` draws on it in mm from its middle, y up. */
export const sheetWith = (marks: number, draw: (context: SKRSContext2D) => void): Grey => {
  const [width, height] = [SHEET.width * SHEET_PER_MM, SHEET.height * SHEET_PER_MM];
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.setTransform(SHEET_PER_MM, 0, 0, -SHEET_PER_MM, width / 2, height / 2);
  for (const { x, y } of SHEET_MARKS.slice(0, marks))
    for (const [radius, color] of [
      [5, '#000'],
      [3.4, '#fff'],
      [1.7, '#000'],
    ] as const) {
      context.fillStyle = color;
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.fill();
    }
  draw(context);
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = data[4 * i]!;
  return { width, height, grey };
};

export interface Darkroom {
  /** The darkest place's light over the brightest's. */
  readonly light: number;
  /** Standard deviation of the lens's blur, pixels. */
  readonly blur: number;
  /** Greys of 255 by which pixels are off. */
  readonly noise: number;
  readonly seed: number;
  /** What a hand or a telephone leaves of the light at a place of the sheet (mm from its middle), 0 to 1. */
  readonly shade?: ((p: Place) => number) | undefined;
}

const TABLE = 120;

/** The picture of a drawn sheet. */
export const photograph = (sheet: Grey, shot: Shot, { light, blur, noise, seed, shade }: Darkroom): Grey => {
  const { width, height } = shot;
  const sharp = new Float32Array(width * height);
  const place = { x: 0, y: 0 };
  const show = shownAt(shot);
  const [sw, sh] = [sheet.width, sheet.height];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      show(x + 0.5, y + 0.5, place);
      const fx = sw / 2 + place.x * SHEET_PER_MM - 0.5;
      const fy = sh / 2 - place.y * SHEET_PER_MM - 0.5;
      const [x0, y0] = [Math.floor(fx), Math.floor(fy)];
      let g = TABLE;
      if (x0 >= 0 && y0 >= 0 && x0 < sw - 1 && y0 < sh - 1) {
        const i = y0 * sw + x0;
        const [a, b] = [fx - x0, fy - y0];
        const top = sheet.grey[i]! * (1 - a) + sheet.grey[i + 1]! * a;
        const bottom = sheet.grey[i + sw]! * (1 - a) + sheet.grey[i + sw + 1]! * a;
        g = 25 + 0.82 * (top * (1 - b) + bottom * b);
      }
      const lit = light + ((1 - light) * (x + 0.4 * y)) / (width + 0.4 * height);
      sharp[y * width + x] = g * lit * (shade ? shade(place) : 1);
    }
  return developed({ width, height, light: blurred(sharp, width, height, blur) }, noise, seed);
};

/** Light that has fallen on a sensor, with its noise. */
export const developed = (
  { width, height, light }: { width: number; height: number; light: Float32Array },
  noise: number,
  seed: number,
): Grey => {
  const random = numbers(seed);
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i += 2) {
    // Two normal numbers of two even ones (Box and Muller, 1958).
    const size = noise * Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    grey[i] = Math.max(0, Math.min(255, Math.round(light[i]! + size * Math.cos(angle))));
    if (i + 1 < grey.length)
      grey[i + 1] = Math.max(0, Math.min(255, Math.round(light[i + 1]! + size * Math.sin(angle))));
  }
  return { width, height, grey };
};

export const blurred = (from: Float32Array, width: number, height: number, sigma: number): Float32Array => {
  if (!(sigma > 0)) return from;
  const reach = Math.ceil(2.5 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const pass = (source: Float32Array, step: number, length: number, line: number, lines: number) => {
    const out = new Float32Array(source.length);
    for (let l = 0; l < lines; l++)
      for (let i = 0; i < length; i++) {
        let total = 0;
        for (let k = -reach; k <= reach; k++) {
          const at = Math.max(0, Math.min(length - 1, i + k));
          total += weights[k + reach]! * source[l * line + at * step]!;
        }
        out[l * line + i * step] = total / sum;
      }
    return out;
  };
  return pass(pass(from, 1, width, width, height), width, height, 1, width);
};

/** Seeded numbers in [0, 1): a 32-bit xorshift (Marsaglia, "Xorshift RNGs", J. Stat. Software 8, 2003). */
export const numbers = (seed: number): (() => number) => {
  let state = (seed ^ 0x9e3779b9) | 1;
  for (let i = 0; i < 8; i++) state = next(state);
  return () => {
    state = next(state);
    return (state >>> 0) / 4294967296;
  };
};

const next = (s: number): number => {
  let v = s;
  v ^= v << 13;
  v ^= v >>> 17;
  v ^= v << 5;
  return v | 0;
};
