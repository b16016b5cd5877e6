/**
 * How a template looks on paper, drawn in mm, y up: a card cut-out with its soft shadow, a pencil line with the grain
 * of the paper in it, and acrylic, clear, with dark and bright rims and etched lines.
 */

import type { SKRSContext2D } from '@napi-rs/canvas';
import { numbers, type Place } from '../camera.ts';

type Ring = readonly Place[];

const along = (context: SKRSContext2D, ring: Ring): void => {
  context.beginPath();
  for (const { x, y } of ring) context.lineTo(x, y);
  context.closePath();
};

const grey = (g: number): string => `rgb(${g},${g},${g})`;

/** Card of a grey, and the shadow that it throws so far (device pixels to the mm are `perMm`). */
export const card = (
  context: SKRSContext2D,
  ring: Ring,
  { tone, shadow, soft, perMm }: { tone: number; shadow: number; soft: number; perMm: number },
): void => {
  context.save();
  if (shadow > 0) {
    context.shadowColor = 'rgba(0,0,0,0.3)';
    // Shadows are laid in device pixels, y down.
    context.shadowOffsetX = shadow * perMm;
    context.shadowOffsetY = shadow * 0.7 * perMm;
    context.shadowBlur = 2 * soft * perMm;
  }
  context.fillStyle = grey(tone);
  along(context, ring);
  context.fill();
  context.restore();
};

/** A pencil line: strokes of a grey that varies along it, as it does on paper with a tooth. */
export const pencil = (
  context: SKRSContext2D,
  ring: Ring,
  { wide, seed }: { wide: number; seed: number },
): void => {
  const random = numbers(seed);
  context.save();
  context.lineWidth = wide;
  context.lineJoin = 'round';
  context.lineCap = 'round';
  context.strokeStyle = grey(125);
  along(context, ring);
  context.stroke();
  // Grains of the paper, lighter and darker, that take more of the lead or less.
  let gone = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    for (; gone < long; gone += 0.12) {
      const t = gone / long;
      const [across, size, tone] = [(random() - 0.5) * wide, 0.04 + 0.06 * random(), 85 + 70 * random()];
      const [nx, ny] = [-(b.y - a.y) / long, (b.x - a.x) / long];
      const off = Math.sign(across) * Math.max(0, Math.abs(across) - size);
      context.fillStyle = grey(tone);
      context.beginPath();
      context.arc(a.x + (b.x - a.x) * t + nx * off, a.y + (b.y - a.y) * t + ny * off, size, 0, 2 * Math.PI);
      context.fill();
    }
    gone -= long;
  });
  context.restore();
};

/** Greys of acrylic on white paper, and on a scanner's open lid. */
const LOOKS = {
  paper: { body: 205, edge: 95, rim: 250, etched: 150 },
  dark: { body: 48, edge: 225, rim: 150, etched: 120 },
} as const;

/**
 * Clear acrylic: a body that lets most light through, its cut edge as a line, a rim of other brightness inside it,
 * and etched lines, one of which runs from edge to edge. On white paper the edge is dark and the rim bright; on a dark
 * ground the edge is bright.
 */
export const acrylic = (context: SKRSContext2D, ring: Ring, on: keyof typeof LOOKS): void => {
  const { body, edge, rim, etched } = LOOKS[on];
  context.save();
  along(context, ring);
  context.clip();
  context.fillStyle = grey(body);
  along(context, ring);
  context.fill();
  const ys = ring.map((p) => p.y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const xs = ring.map((p) => p.x);
  const left = Math.min(...xs);
  context.strokeStyle = grey(etched);
  context.lineWidth = 0.25;
  for (const y of [low + 6.35, high - 12.7, high - 19.05]) {
    context.beginPath();
    context.moveTo(left + (y === high - 12.7 ? 0 : 6), y);
    context.lineTo(left + (y === high - 12.7 ? 200 : 30), y);
    context.stroke();
  }
  // Twice as wide as is seen: the half outside is cut off by the clip.
  for (const [tone, wide] of [
    [rim, 1.1],
    [edge, 0.6],
  ] as const) {
    context.strokeStyle = grey(tone);
    context.lineWidth = 2 * wide;
    along(context, ring);
    context.stroke();
  }
  context.restore();
};
