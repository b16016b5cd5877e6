/**
 * Reads a picture of a template into greys: the head first, so that a picture that is too large is refused before
 * anything is decoded; then @napi-rs/canvas decodes, and its pixels are taken a band at a time.
 *
 * Bounds: 128 MB of file, 60 million pixels; about 10 bytes of memory for a pixel.
 */

import { resolve } from 'node:path';
import { type Problem, ProblemError } from '../document/index.ts';
import { BAND, DAMAGED, greysOf, type Picture, readPictureHead } from '../trace/index.ts';
import { fileProblem, READING } from './file-problem.ts';
import type { Io } from './io.ts';
import { type CanvasLibrary, loadCanvas } from './load-canvas.ts';
import { survivesDecoding } from './probe-picture.ts';
import { readLimited } from './read-file.ts';

/** Twice what a scan of 60 million pixels takes without compression in grey. */
const MOST_BYTES = 128 * 1024 * 1024;

export interface PictureFile {
  readonly path: string;
  readonly picture: Picture;
  readonly pixelsPerMm: number | undefined;
  /** For painting on: the decoded picture. */
  readonly image: Awaited<ReturnType<CanvasLibrary['loadImage']>>;
  readonly canvas: CanvasLibrary;
}

/** Throws a ProblemError. */
export const readPicture = async (io: Io, name: string): Promise<PictureFile> => {
  const path = resolve(io.cwd, name);
  const refuse = (problem: Omit<Problem, 'place'>): never => {
    throw new ProblemError([{ ...problem, place: { file: name } }]);
  };
  const bytes = await readBytes(io, path, name);
  if (bytes === undefined)
    return refuse({
      code: 'file-too-large',
      message: 'this file is too large',
      expected: 'at most 128 MB',
    });
  const read = readPictureHead(bytes);
  if (!read.ok) return refuse(read.problem);
  const { width, height, pixelsPerMm } = read.head;
  const canvas = await loadCanvas('trace the template on another computer, or measure points');
  if (!(await survivesDecoding(bytes))) return refuse(DAMAGED);
  const image = await canvas.loadImage(bytes).catch(() => refuse(DAMAGED));
  // A file that says one size in its head and holds another is not to be trusted; a camera may turn a picture.
  const isSize =
    (image.width === width && image.height === height) || (image.width === height && image.height === width);
  if (!isSize) return refuse(DAMAGED);
  return { path, picture: pictureOf(canvas, image), pixelsPerMm, image, canvas };
};

const readBytes = async (io: Io, path: string, name: string): Promise<Uint8Array | undefined> => {
  try {
    const status = await io.files.stat(path);
    if (status.isDirectory())
      throw new ProblemError([
        {
          code: 'file-eisdir',
          message: 'this is a folder and not a file',
          hint: 'name a file in it',
          place: { file: name },
        },
      ]);
    return await readLimited(io, path, MOST_BYTES);
  } catch (error) {
    const problem = fileProblem(error, name, READING);
    if (problem) throw new ProblemError([problem]);
    throw error;
  }
};

const pictureOf = (canvas: CanvasLibrary, image: PictureFile['image']): Picture => {
  const { width, height } = image;
  const context = canvas.createCanvas(width, Math.min(BAND, height)).getContext('2d');
  return greysOf(width, height, (y, rows) => {
    context.clearRect(0, 0, width, BAND);
    context.drawImage(image, 0, -y);
    return context.getImageData(0, 0, width, rows).data;
  });
};
