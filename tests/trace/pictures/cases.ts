/**
 * Pictures of templates whose true outline is known: photographs of the capture sheet, and scans. All is seeded, so a
 * case is the same picture on every day.
 */

import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import {
  blurred,
  developed,
  type Grey,
  numbers,
  type Place,
  photograph,
  SHEET_PER_MM,
  type Shot,
  sheetWith,
} from '../camera.ts';
import { acrylic, card, pencil } from './media.ts';
import { SHAPES, type Shape } from './shapes.ts';

type Medium = 'card' | 'pencil' | 'acrylic';

/** What a person says to the program of such a picture. */
interface Said {
  readonly side: 'middle' | 'outer';
  readonly pixelsPerMm: number | undefined;
  readonly raised: { readonly thickness: number; readonly height: number } | undefined;
}

export interface Case {
  readonly kind: 'photo' | 'scan';
  readonly medium: Medium;
  readonly shape: Shape;
  /** What tells the case from the others, for the table. */
  readonly about: string;
  /** The picture's file, JPEG or PNG. */
  readonly file: () => Uint8Array;
  readonly said: Said;
  /** From what the tracer calls a place, mm, to the shape's own frame. */
  readonly place: (p: Place) => Place;
  /** Paper that does not lie flat, or a picture that was cut: what such a picture says need only be true. */
  readonly isSpoilt: boolean;
}

/** Acrylic as thick as for a longarm (common practice), mm. */
const THICKNESS = 6.35;

/** Neighbours' numbers would begin alike (Knuth's multiplicative hashing, TAOCP 3, 6.4). */
const seedOf = (i: number): number => Math.imul(i, 0x9e3779b1);

const TO_RADIANS = Math.PI / 180;

const encoded = ({ width, height, grey }: Grey, quality?: number): Uint8Array => {
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  const image = context.createImageData(width, height);
  const words = new Uint32Array(image.data.buffer);
  for (let i = 0; i < words.length; i++) words[i] = 0xff000000 | (grey[i]! * 0x010101);
  context.putImageData(image, 0, 0);
  return quality === undefined ? canvas.toBuffer('image/png') : canvas.toBuffer('image/jpeg', quality);
};

const draw = (
  context: SKRSContext2D,
  medium: Medium,
  ring: readonly Place[],
  random: () => number,
  { perMm, dark }: { perMm: number; dark: boolean },
): void => {
  if (medium === 'pencil')
    pencil(context, ring, { wide: 0.4 + 0.4 * random(), seed: Math.ceil(9999 * random()) });
  else if (medium === 'acrylic') acrylic(context, ring, dark ? 'dark' : 'paper');
  else {
    const [tone, shadow, soft] = [35 + 85 * random(), 0.4 + 1.2 * random(), 0.4 + 0.8 * random()];
    card(context, ring, { tone, shadow: perMm > 0 && !dark ? shadow : 0, soft, perMm });
  }
};

/** How high the paper stands over the table: it bows, or has a corner up. */
const liftOf = (kind: number, between: (a: number, b: number) => number): Shot['lift'] => {
  const [high, way, off] = [between(0.3, 3), between(0, Math.PI), between(-40, 40)];
  const [c, s] = [Math.cos(way), Math.sin(way)];
  if (kind === 0) return ({ x, y }) => high * (1 - ((c * x + s * y - off) / 120) ** 2);
  const [sx, sy] = [Math.sign(c), Math.sign(s)];
  return ({ x, y }) => 4 * high * Math.max(0, (sx * x + sy * y - 40) / 160) ** 2;
};

const photoCase = (index: number, medium: Medium, isSpoilt: boolean): Case => {
  const random = numbers(seedOf(1000 + index));
  const between = (a: number, b: number): number => a + (b - a) * random();
  const shape = SHAPES[index % SHAPES.length]!;
  const away = between(320, 700);
  const million = between(2, 12);
  const height = Math.round(Math.sqrt((million * 1e6 * 4) / 3));
  const width = Math.round((height * 3) / 4);
  const tilt = between(0, 35) * TO_RADIANS;
  const axis = between(0, 2 * Math.PI);
  const aim = { x: between(-8, 8), y: between(-8, 8) };
  const cut = isSpoilt && index % 2 === 0 ? between(0.02, 0.1) * width : 0;
  const shot: Shot = {
    away,
    width,
    height,
    focal: (away * height) / between(380, 480),
    tilt,
    axis,
    turn: between(-0.15, 0.15) + (index % 2) * Math.PI,
    k1: between(-0.15, 0.05),
    k2: between(-0.02, 0.02),
    aim,
    offCentre: { x: cut, y: -cut },
    lift: isSpoilt && index % 2 === 1 ? liftOf(index % 4 === 1 ? 0 : 1, between) : undefined,
  };
  const [way, from, soft, left] = [
    between(0, 2 * Math.PI),
    between(-60, 60),
    between(12, 40),
    between(0.65, 0.9),
  ];
  const room = {
    light: between(0.55, 1),
    blur: between(0.5, 1.6),
    noise: between(2, 7),
    seed: index + 1,
    // The edge of a soft shadow: from light to shade as the logistic curve goes.
    shade: ({ x, y }: Place): number =>
      1 - (1 - left) / (1 + Math.exp((-4 * (x * Math.cos(way) + y * Math.sin(way) - from)) / soft)),
  };
  const turn = between(-3, 3) * TO_RADIANS;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const laid = shape.ring.map(({ x, y }) => ({ x: c * x - s * y, y: s * x + c * y }));
  // The lens stands over the sheet so high, and over this place of it.
  const high = away * Math.cos(tilt);
  const foot = {
    x: aim.x - Math.sin(axis) * away * Math.sin(tilt),
    y: aim.y + Math.cos(axis) * away * Math.sin(tilt),
  };
  const isRaised = medium === 'acrylic';
  // What lies over the sheet by the thickness is seen on it farther from the lens's foot (central projection).
  const larger = isRaised ? high / (high - THICKNESS) : 1;
  const seen = laid.map(({ x, y }) => ({
    x: foot.x + (x - foot.x) * larger,
    y: foot.y + (y - foot.y) * larger,
  }));
  return {
    kind: 'photo',
    medium,
    shape,
    about: [
      `${(shot.k1 >= 0 ? '+' : '') + shot.k1.toFixed(2)}`,
      `${((tilt * 180) / Math.PI).toFixed(0).padStart(2)}°`,
      `${away.toFixed(0)} mm`,
      `${((width * height) / 1e6).toFixed(1).padStart(4)} Mpx`,
      shot.lift ? 'curls' : cut > 0 ? 'cut' : '',
    ].join(' '),
    file: () =>
      encoded(
        photograph(
          sheetWith(8, (context) =>
            draw(context, medium, seen, numbers(7 + index), { perMm: SHEET_PER_MM, dark: false }),
          ),
          shot,
          room,
        ),
        75,
      ),
    said: {
      side: isRaised ? 'outer' : 'middle',
      pixelsPerMm: undefined,
      raised: isRaised ? { thickness: THICKNESS, height: high } : undefined,
    },
    place: (p) => {
      // The outline is made smaller about the sheet's own origin, 85 and 119 mm from its middle.
      const q = { x: p.x * larger - 85, y: p.y * larger - 119 };
      const [x, y] = [foot.x + (q.x - foot.x) / larger, foot.y + (q.y - foot.y) / larger];
      return { x: c * x + s * y, y: -s * x + c * y };
    },
    isSpoilt,
  };
};

const scanCase = (index: number, medium: Medium, dpi: number, isLineArt: boolean): Case => {
  const random = numbers(seedOf(5000 + index));
  const between = (a: number, b: number): number => a + (b - a) * random();
  const shape = SHAPES[index % SHAPES.length]!;
  const perMm = dpi / 25.4;
  const turn = between(-5, 5) * TO_RADIANS;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [wide, high] = [160, 215];
  const off = { x: wide / 2 + between(-3, 3), y: high / 2 + between(-3, 3) };
  const isDark = medium === 'acrylic';
  const [width, height] = [Math.round(wide * perMm), Math.round(high * perMm)];
  return {
    kind: 'scan',
    medium,
    shape,
    about: `${String(dpi).padStart(3)} dpi ${isLineArt ? 'line art' : 'grey'}`,
    file: () => {
      // Drawn four times as fine, so that a pixel is the mean of sixteen.
      const fine = dpi > 350 ? 2 : 4;
      const light = new Float32Array(width * height);
      const canvas = createCanvas(width * fine, height * fine);
      const context = canvas.getContext('2d');
      context.fillStyle = isDark ? '#0e0e0e' : '#fff';
      context.fillRect(0, 0, width * fine, height * fine);
      const k = perMm * fine;
      context.setTransform(k, 0, 0, -k, off.x * k, height * fine - off.y * k);
      context.rotate(turn);
      draw(context, medium, shape.ring, numbers(70 + index), { perMm: 0, dark: isDark });
      const rows = 64;
      for (let y = 0; y < height; y += rows) {
        const some = Math.min(rows, height - y);
        const { data } = context.getImageData(0, y * fine, width * fine, some * fine);
        for (let r = 0; r < some; r++)
          for (let x = 0; x < width; x++) {
            let sum = 0;
            for (let v = 0; v < fine; v++)
              for (let u = 0; u < fine; u++) sum += data[4 * ((r * fine + v) * width * fine + x * fine + u)]!;
            light[(y + r) * width + x] = 18 + (0.86 * sum) / (fine * fine);
          }
      }
      const grey = developed(
        { width, height, light: blurred(light, width, height, 0.6) },
        isLineArt ? 3 : 5,
        index + 1,
      );
      if (isLineArt) for (let i = 0; i < grey.grey.length; i++) grey.grey[i] = grey.grey[i]! < 140 ? 0 : 255;
      return encoded(grey);
    },
    said: { side: isDark ? 'outer' : 'middle', pixelsPerMm: perMm, raised: undefined },
    place: ({ x, y }) => {
      const [dx, dy] = [x - off.x, y - off.y];
      return { x: c * dx + s * dy, y: -s * dx + c * dy };
    },
    isSpoilt: false,
  };
};

/** By fives of each shape: card and pencil twice as often as acrylic itself. */
const MEDIA: readonly Medium[] = ['card', 'pencil', 'acrylic', 'card', 'pencil'];

export const PHOTOS: readonly Case[] = Array.from({ length: 60 }, (_, i) =>
  photoCase(i, MEDIA[Math.floor(i / SHAPES.length) % MEDIA.length]!, false),
);

export const SPOILT: readonly Case[] = Array.from({ length: 12 }, (_, i) => photoCase(60 + i, 'card', true));

export const SCANS: readonly Case[] = [
  ...[150, 200, 300, 600].flatMap((dpi) =>
    [false, true].map((isLineArt) => ({ dpi, isLineArt, medium: 'card' as const })),
  ),
  { dpi: 300, isLineArt: false, medium: 'pencil' as const },
  { dpi: 200, isLineArt: false, medium: 'acrylic' as const },
].flatMap(({ dpi, isLineArt, medium }, i) =>
  SHAPES.map((_, k) => scanCase(i * SHAPES.length + k, medium, dpi, isLineArt)),
);
