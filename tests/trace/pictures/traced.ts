/** A case's picture decoded, traced and judged: what the program says of it, and what is true. */

import { createCanvas, loadImage } from '@napi-rs/canvas';
import {
  BAND,
  greysOf,
  lineArtDoubt,
  outlineDoubt,
  photoDoubt,
  raisedDoubt,
  tracePicture,
} from '../../../src/trace/index.ts';
import type { Case } from './cases.ts';
import { type Judged, judged } from './judge.ts';

export interface Answer {
  readonly one: Case;
  /** Taken without a word, called unsure, or refused. */
  readonly said: 'accepted' | 'unsure' | 'refused';
  /** In what words, where it was not accepted. */
  readonly words: string;
  readonly judged: Judged | undefined;
  /** As far as the outline may be off, as a photograph's marks say, mm. */
  readonly expected: number | undefined;
  /** Of the processor, for decoding and tracing, s. */
  readonly seconds: number;
  readonly pixels: number;
}

export const answerTo = async (one: Case): Promise<Answer> => {
  const file = one.file();
  const before = process.cpuUsage();
  const image = await loadImage(file);
  const { width, height } = image;
  const canvas = createCanvas(width, BAND);
  const context = canvas.getContext('2d');
  const picture = greysOf(width, height, (y, rows) => {
    context.drawImage(image, 0, -y);
    return context.getImageData(0, 0, width, rows).data;
  });
  const result = tracePicture(picture, { tolerance: 0.03, sheetScale: { x: 1, y: 1 }, ...one.said });
  const { user, system } = process.cpuUsage(before);
  const common = { one, seconds: (user + system) / 1e6, pixels: width * height };
  if (!result.ok) {
    const { code, found } = result.problem;
    return {
      ...common,
      said: 'refused',
      words: `${code}${found ? `: ${found}` : ''}`,
      judged: undefined,
      expected: undefined,
    };
  }
  const { outline, capture, toPixels } = result.traced;
  const doubts = [
    photoDoubt(capture),
    lineArtDoubt(result.traced),
    raisedDoubt(result.traced, one.said.raised?.thickness),
    outlineDoubt(outline, toPixels),
  ].filter((d) => d !== undefined);
  return {
    ...common,
    said: doubts.length > 0 ? 'unsure' : 'accepted',
    words: doubts.map((d) => d.slice(0, 48)).join('; '),
    judged: judged(
      outline.path.pieces,
      outline.corners.map((c) => c.point),
      one.shape,
      one.place,
    ),
    expected: capture?.expected,
  };
};
