/** Pictures as a command is given them: a page with something dark on it, and files that claim what they are not. */

import { deflateSync } from 'node:zlib';
import { createCanvas } from '@napi-rs/canvas';

export type Context = ReturnType<ReturnType<typeof createCanvas>['getContext']>;

/** A page of 120 by 80 mm at 200 dots per inch. */
export const picture = (
  draw: (context: Context, mm: number) => void,
  mime: 'image/png' | 'image/jpeg' = 'image/png',
) => {
  const mm = 200 / 25.4;
  const canvas = createCanvas(Math.round(120 * mm), Math.round(80 * mm));
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.fillStyle = '#222';
  context.strokeStyle = '#222';
  context.lineWidth = 0.5 * mm;
  draw(context, mm);
  return mime === 'image/png' ? canvas.toBuffer(mime) : canvas.toBuffer(mime, 95);
};

const chunk = (name: string, data: Uint8Array): Buffer => {
  let crc = 0xffffffff;
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  for (const byte of body) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  const out = Buffer.alloc(8 + body.length);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE((crc ^ 0xffffffff) >>> 0, 4 + body.length);
  return out;
};

/** The PNG with a pHYs chunk of so many dots to the metre behind its head (PNG, W3C Recommendation 2003, 11.3.5.3). */
export const stating = (png: Buffer, dots: number): Buffer => {
  const density = Buffer.alloc(9);
  density.writeUInt32BE(dots, 0);
  density.writeUInt32BE(dots, 4);
  density[8] = 1;
  // The signature takes 8 bytes, the head 25.
  return Buffer.concat([png.subarray(0, 33), chunk('pHYs', density), png.subarray(33)]);
};

/** A PNG whose head claims a size, with so much data as it is given. */
export const claiming = (width: number, height: number, data: Uint8Array): Buffer => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(data)),
    chunk('IEND', new Uint8Array()),
  ]);
};

export const rectangle = (c: Context, mm: number): void => c.fillRect(30 * mm, 20 * mm, 60 * mm, 30 * mm);
export const whole = picture(rectangle);
