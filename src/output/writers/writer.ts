/** What a writer is given, and what it makes: one kind of file for a picture of a design. */

import type { LayerId, StyledDrawing } from '../../drawing/index.ts';
import type { Units } from '../../length/index.ts';
import type { PerEdge } from '../../pagination/index.ts';
import type { Deflate, FontBytes } from '../pdf/index.ts';
import type { Canvas2D, PictureOptions } from '../png/index.ts';

/** What terminal and page each have in their own way. Asked for late: not every file needs it. */
export interface Means {
  readonly deflate: Deflate;
  readonly fonts: () => Promise<FontBytes>;
  /** Where pictures of pixels can be made. Throws a ProblemError where it turns out that they cannot. */
  readonly canvas?: (width: number, height: number) => Promise<Painting>;
}

/** A canvas to paint on, and the picture on it as PNG. */
interface Painting {
  readonly context: Canvas2D;
  readonly png: () => Promise<Uint8Array>;
}

export interface PictureWanted {
  readonly title: string;
  /** What was designed, a line each. */
  readonly summary: readonly string[];
  readonly units: Units;
  readonly without: readonly LayerId[];
  readonly measured?: PerEdge | undefined;
  readonly pixels?: Pick<PictureOptions, 'dotsPerInch' | 'widthInPixels'> | undefined;
}

interface WrittenPicture {
  readonly bytes: string | Uint8Array;
  /** `one page at true size` */
  readonly size: string;
}

export type Write = (drawing: StyledDrawing, wanted: PictureWanted, means: Means) => Promise<WrittenPicture>;

export interface Writer {
  /** As it is said: `SVG`. */
  readonly name: string;
  /** What help says of it, in a few words. */
  readonly about?: string;
  /** Of its files, and as it is asked for. */
  readonly ending: string;
  /** What else it may be told. */
  readonly takes: readonly ('measured' | 'pixels')[];
  /** Whether letters are our own font's: who shows any other file brings fonts along. */
  readonly hasOurLetters: boolean;
  readonly write: Write;
}
