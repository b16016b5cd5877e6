/** A picture of a template that a test gives to the page, and where on the page it is looked for. */

import { createCanvas } from '@napi-rs/canvas';
import type { Page } from 'playwright-core';
import { withPhysicalSize } from '../../../src/output/png/index.ts';

/** Pixels per mm of the scan. */
const FINE = 8;

/** A bracket 150 mm by 50 mm: a flat of 70 mm with a smudge 4 mm wide and 3 mm high on it, then an arc. */
export const bracket = (kind: 'image/png' | 'image/jpeg' = 'image/png'): Uint8Array => {
  const canvas = createCanvas(180 * FINE, 80 * FINE);
  const context = canvas.getContext('2d');
  context.fillStyle = '#f2f2f2';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.setTransform(FINE, 0, 0, FINE, 15 * FINE, 65 * FINE);
  context.beginPath();
  context.moveTo(0, 0);
  context.lineTo(0, -30);
  context.lineTo(70, -30);
  // From (70, 30) to (150, 30), 20 mm high: the circle of radius 50 about (110, 0).
  context.arc(110, 0, 50, -Math.PI + Math.asin(30 / 50), -Math.asin(30 / 50));
  context.lineTo(150, 0);
  context.closePath();
  context.fillStyle = '#303030';
  context.fill();
  context.fillRect(38, -33, 4, 4);
  return kind === 'image/png'
    ? withPhysicalSize(canvas.toBuffer(kind), FINE)
    : new Uint8Array(canvas.toBuffer(kind, 92));
};

export const give = async (
  page: Page,
  name: string,
  bytes: Uint8Array,
  mimeType = 'image/png',
): Promise<void> => {
  const files = [{ name, mimeType, buffer: Buffer.from(bytes) }];
  await page.locator('input[type=file]').first().setInputFiles(files);
};

export const panel = (page: Page) => page.locator('#trace');
export const button = (page: Page, name: string | RegExp) => panel(page).getByRole('button', { name });
