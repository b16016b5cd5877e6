/**
 * A picture file as greys, by the browser's own decoder, in a worker where that can read files (`ask-trace.ts`): what she
 * chose is read here and nowhere else, and nothing that the file says of place and time is kept.
 */

import { type Problem, ProblemError } from '../../document/index.ts';
import { BAND, DAMAGED, greysOf, OTHER_FORMAT, readPictureHead, sizeProblem } from '../../trace/index.ts';
import { madeWords } from '../words/words.ts';
import type { DecodedPicture } from './messages.ts';

/** Far more than a camera's picture; larger files are not even read. */
const MOST_BYTES = 128 * 1024 * 1024;
/** The longer side of what is shown of it, pixels: sharp on any screen. */
const SHOWN = 2400;
/** The quality at which all of it is kept: traced again it comes out as it was. */
const KEPT = 0.95;

/** Throws a ProblemError that says what can be done. */
export const decoded = async (file: Blob): Promise<DecodedPicture> => {
  if (file.size > MOST_BYTES)
    throw refused({ ...TOO_LARGE, found: `${Math.ceil(file.size / 1024 ** 2)} MB` });
  const bytes = new Uint8Array(await file.arrayBuffer());
  const read = readPictureHead(bytes);
  // Of other kinds only the browser knows: whether it decodes them is tried.
  if (!read.ok && read.problem.code !== 'not-a-picture') throw refused(read.problem);
  const image = await createImageBitmap(file).catch(() => {
    throw refused(read.ok ? DAMAGED : UNKNOWN);
  });
  try {
    const problem = sizeProblem(image.width, image.height);
    if (problem) throw refused(problem);
    return {
      picture: pictureOf(image),
      shown: await copyOf(image, SHOWN, 0.85),
      kept: await copyOf(image, Math.max(image.width, image.height), KEPT),
      pixelsPerMm: read.ok ? read.head.pixelsPerMm : undefined,
    };
  } finally {
    image.close();
  }
};

const refused = (problem: Problem): ProblemError => new ProblemError([problem]);

const TOO_LARGE: Problem = {
  code: 'file-too-large',
  message: madeWords.pictureTooLarge,
  expected: madeWords.pictureMost({ megabytes: MOST_BYTES / 1024 ** 2 }),
};
const UNKNOWN: Problem = {
  code: 'not-a-picture',
  message: madeWords.notAPicture,
  hint: OTHER_FORMAT,
};

const canvasOf = (width: number, height: number): [OffscreenCanvas, OffscreenCanvasRenderingContext2D] => {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('The browser gives no canvas');
  return [canvas, context];
};

const pictureOf = (image: ImageBitmap): DecodedPicture['picture'] => {
  const { width, height } = image;
  const [, context] = canvasOf(width, Math.min(BAND, height));
  return greysOf(width, height, (y, rows) => {
    context.clearRect(0, 0, width, BAND);
    context.drawImage(image, 0, -y);
    return context.getImageData(0, 0, width, rows).data;
  });
};

/** A copy without anything that the file says besides its pixels. */
const copyOf = (image: ImageBitmap, longer: number, quality: number): Promise<Blob> => {
  const scale = Math.min(1, longer / Math.max(image.width, image.height));
  const [canvas, context] = canvasOf(Math.round(image.width * scale), Math.round(image.height * scale));
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.convertToBlob({ type: 'image/jpeg', quality });
};
