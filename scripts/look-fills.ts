/**
 * Draws every fill in every sample region, for looking: out/fills/FILL-REGION.png at true size (150 dots an
 * inch) and reduced to a third, side by side. Names of fills as arguments choose.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { FILLS } from '../src/fill/index.ts';
import { boxHeight, boxWidth, flatten, type Path, regionBox } from '../src/geometry/index.ts';
import { HARD_REGIONS, SWAG_REGIONS } from '../tests/fill/sample-regions.ts';

const DOTS_PER_MM = 150 / 25.4;
const OUT = 'out/fills';

const trace = (ctx: SKRSContext2D, path: Path): void => {
  ctx.beginPath();
  flatten(path, 0.005).forEach((p, i) => {
    if (i === 0) ctx.moveTo(p.x, p.y);
    else ctx.lineTo(p.x, p.y);
  });
  if (path.closed) ctx.closePath();
  ctx.stroke();
};

const wanted = process.argv.slice(2);
const regions = { ...SWAG_REGIONS, ...(wanted.includes('hard') ? HARD_REGIONS : {}) };
mkdirSync(OUT, { recursive: true });
for (const fill of FILLS) {
  if (wanted.some((w) => w !== 'hard' && !w.startsWith('@')) && !wanted.includes(fill.name)) continue;
  for (const [name, region] of Object.entries(regions)) {
    if (wanted.some((w) => w.startsWith('@')) && !wanted.includes(`@${name}`)) continue;
    const start = performance.now();
    const result = fill.fill(region, { spacing: 6.35, seed: 1 });
    const took = performance.now() - start;
    const length = result.paths.length;
    console.log(`${fill.name} ${name}: ${length} paths, ${took.toFixed(0)} ms ${result.messages.join('; ')}`);
    const box = regionBox(region);
    if (!(boxWidth(box) > 0)) continue;
    const margin = 5;
    const [w, h] = [boxWidth(box) + 2 * margin, boxHeight(box) + 2 * margin];
    const canvas = createCanvas(Math.ceil(w * 1.4 * DOTS_PER_MM), Math.ceil(h * DOTS_PER_MM));
    const ctx = canvas.getContext('2d');
    ctx.fillStyle = '#fff';
    ctx.fillRect(0, 0, canvas.width, canvas.height);
    for (const [scale, x] of [
      [1, 0],
      [1 / 3, w + 2],
    ] as const) {
      ctx.setTransform(
        scale * DOTS_PER_MM,
        0,
        0,
        -scale * DOTS_PER_MM,
        x * DOTS_PER_MM,
        h * DOTS_PER_MM * scale,
      );
      ctx.translate(margin - box.minX, margin - box.minY);
      ctx.lineJoin = 'round';
      ctx.strokeStyle = '#888';
      ctx.lineWidth = 0.5;
      for (const loop of region.loops) trace(ctx, loop);
      ctx.strokeStyle = '#204060';
      ctx.lineWidth = 0.35 / Math.sqrt(scale);
      for (const path of result.paths) trace(ctx, path);
    }
    writeFileSync(`${OUT}/${fill.name}-${name.replaceAll(' ', '-')}.png`, canvas.toBuffer('image/png'));
  }
}
