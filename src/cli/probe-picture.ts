/**
 * Whether the decoder lives through a picture. @napi-rs/canvas before 1.1 ends the whole process at a head that it
 * cannot make anything of (a PNG of 3 bits, a JPEG without a scan), where nothing can be caught. Checking heads
 * closely enough would be a decoder of our own, so the picture is first shown to a process that may die of it.
 */

import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';

const TRIAL =
  "require(process.argv[1]).loadImage(require('node:fs').readFileSync(0)).then(() => process.exit(0), () => process.exit(1))";

/** ms; 60 million pixels take about two seconds. */
const LONGEST = 60_000;

/** Where no process can be had, the picture gets the benefit of the doubt. */
export const survivesDecoding = (bytes: Uint8Array): Promise<boolean> =>
  new Promise((resolve) => {
    const canvas = createRequire(import.meta.url).resolve('@napi-rs/canvas');
    const child = spawn(process.execPath, ['-e', TRIAL, canvas], {
      stdio: ['pipe', 'ignore', 'ignore'],
      timeout: LONGEST,
    });
    child.on('error', () => resolve(true));
    child.on('close', (code) => resolve(code === 0));
    // It may be gone before it has read everything.
    child.stdin.on('error', () => {});
    child.stdin.end(bytes);
  });
