/** Tools that others wrote, run on files that we wrote. One that is missing is an error, never a test passed over. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Told {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Throws where the tool is not installed. */
export const runTool = (tool: string, args: readonly string[]): Told => {
  const ran = spawnSync(tool, args, { encoding: 'utf8' });
  if (ran.error)
    throw new Error(`${tool} cannot be run: ${ran.error.message}. Debian has it in qpdf or poppler-utils.`);
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
};

/** A folder for the time of one call. */
export const withFolder = async <T>(use: (folder: string) => T | Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'swagwright-tools-'));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

export interface Gray {
  readonly width: number;
  readonly height: number;
  /** 0 white to 1 black, rows from the top. */
  readonly dark: Float32Array;
  /** The smaller pixels that they are made of: 255 white to 0 black, rows from the top, after `start` other bytes. */
  readonly fine: {
    readonly width: number;
    readonly height: number;
    readonly start: number;
    readonly bytes: Uint8Array;
  };
}

/**
 * Every page as poppler paints it, each pixel made from `finer` × `finer` smaller ones: poppler moves level and
 * upright lines to whole pixels, and here tenths of a pixel count.
 */
export const pagesOf = (pdf: Uint8Array, dotsPerInch: number, finer: number): Promise<Gray[]> =>
  withFolder((folder) => {
    const file = join(folder, 'file.pdf');
    writeFileSync(file, pdf);
    const told = runTool('pdftoppm', [
      '-gray',
      '-r',
      String(finer * dotsPerInch),
      file,
      join(folder, 'page'),
    ]);
    if (told.code !== 0 || told.err !== '') throw new Error(`pdftoppm: ${told.err}`);
    // Numbers are padded, so that the names sort as the pages do.
    const names = readdirSync(folder).filter((name) => name.endsWith('.pgm'));
    return names.sort().map((name) => coarser(readFileSync(join(folder, name)), finer));
  });

/** A binary PGM (Netpbm: "P5", width, height, 255, one blank, rows from the top), its pixels taken together. */
const coarser = (bytes: Buffer, finer: number): Gray => {
  const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  if (!head) throw new Error('Not a grey picture.');
  const [fineWidth, fineHeight] = [Number(head[1]), Number(head[2])];
  const [width, height] = [Math.ceil(fineWidth / finer), Math.ceil(fineHeight / finer)];
  const dark = new Float32Array(width * height);
  const start = head[0].length;
  for (let y = 0; y < fineHeight; y++) {
    const row = Math.floor(y / finer) * width;
    for (let x = 0; x < fineWidth; x++)
      dark[row + Math.floor(x / finer)]! += 255 - bytes[start + y * fineWidth + x]!;
  }
  for (let i = 0; i < dark.length; i++) dark[i]! /= 255 * finer * finer;
  return { width, height, dark, fine: { width: fineWidth, height: fineHeight, start, bytes } };
};
