/** Reads a PDF three ways that know nothing of the code that wrote it: bytes, a walk over operators, and pixels. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { deflateSync, inflateSync } from 'node:zlib';
import { createCanvas } from '@napi-rs/canvas';
import { PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

const require = createRequire(import.meta.url);
const fontFile = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}`)));

export const FONTS = { regular: fontFile('DejaVuSans.ttf'), bold: fontFile('DejaVuSans-Bold.ttf') };
export const deflate = (bytes: Uint8Array): Uint8Array => new Uint8Array(deflateSync(bytes));
export const WORDS = {
  title: 'Newel border',
  summary: ['Span 8 5/8 in, depth 2 3/8 in'],
  cautions: ['Stop with the needle down before moving a hand.'],
  units: 'in',
  deflate,
  fonts: FONTS,
} as const;

export const POINT = 72 / 25.4;

export interface Raw {
  readonly text: string;
  readonly mediaBox: readonly number[];
  readonly content: string;
  /** By their names in the page's resources. */
  readonly forms: Readonly<Record<string, string>>;
}

const inflate = (object: unknown): string => {
  if (!(object instanceof PDFRawStream)) throw new Error('Not a stream.');
  return Buffer.from(inflateSync(object.getContents())).toString('latin1');
};

/** The inflated content of every page and of the forms that it uses. */
export const rawPages = async (bytes: Uint8Array): Promise<Raw[]> => {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  return doc.getPages().map((page) => {
    const box = page.getMediaBox();
    const forms: Record<string, string> = {};
    const xObjects = page.node.Resources()?.lookup(PDFName.of('XObject'), PDFDict);
    for (const [name] of xObjects?.entries() ?? [])
      forms[name.decodeText()] = inflate(xObjects!.lookup(name));
    return {
      text: Buffer.from(bytes).toString('latin1'),
      mediaBox: [box.x, box.y, box.width, box.height],
      content: inflate(page.node.lookup(PDFName.of('Contents'))),
      forms,
    };
  });
};

export const openPages = async (bytes: Uint8Array) => {
  // pdf.js empties the array that it is given.
  const task = getDocument({
    data: new Uint8Array(bytes),
    standardFontDataUrl: `${join(dirname(require.resolve('pdfjs-dist/package.json')), 'standard_fonts')}/`,
    verbosity: 0,
  });
  return task.promise;
};

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A path as it lies on the page, in points: its moves and lines' ends, and whether the pen was set to dashes. */
export interface WalkedPath {
  readonly points: readonly Spot[];
  readonly curves: boolean;
  readonly dashed: boolean;
}

type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Every path of a page with all transforms applied. */
export const walkPaths = async (page: PDFPageProxy): Promise<WalkedPath[]> => {
  const { fnArray, argsArray } = await page.getOperatorList();
  const stack: (readonly [Matrix, boolean])[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let dashed = false;
  const save = (): unknown => stack.push([matrix, dashed]);
  const restore = (): void => {
    [matrix, dashed] = stack.pop()!;
  };
  const paths: WalkedPath[] = [];
  for (let i = 0; i < fnArray.length; i++) {
    const args = argsArray[i];
    switch (fnArray[i]) {
      case OPS.save:
        save();
        break;
      case OPS.restore:
        restore();
        break;
      case OPS.setDash:
        dashed = (args[0] as ArrayLike<number>).length > 0;
        break;
      case OPS.transform:
        matrix = times(matrix, args as Matrix);
        break;
      case OPS.paintFormXObjectBegin:
        save();
        if (args[0]) matrix = times(matrix, args[0] as Matrix);
        break;
      case OPS.paintFormXObjectEnd:
        restore();
        break;
      case OPS.constructPath: {
        // pdf.js packs a path as numbers: 0 move, 1 line, 2 cubic, 3 quadratic, 4 close, each with its points.
        const data: ArrayLike<number> = args[1][0] ?? [];
        const points: Spot[] = [];
        let curves = false;
        const at = (k: number): Spot => ({
          x: matrix[0] * data[k]! + matrix[2] * data[k + 1]! + matrix[4],
          y: matrix[1] * data[k]! + matrix[3] * data[k + 1]! + matrix[5],
        });
        for (let k = 0; k < data.length; ) {
          const code = data[k]!;
          if (code <= 1) {
            points.push(at(k + 1));
            k += 3;
          } else if (code === 2) {
            curves = true;
            points.push(at(k + 5));
            k += 7;
          } else if (code === 3) {
            throw new Error('A quadratic curve: nothing here writes one.');
          } else k += 1;
        }
        paths.push({ points, curves, dashed });
        break;
      }
    }
  }
  if (stack.length !== 0) throw new Error('Saves and restores are not balanced.');
  return paths;
};

/** A text as it stands on a page, mm: where its base line begins and ends, and its size. */
export interface Written {
  readonly text: string;
  readonly from: Spot;
  readonly to: Spot;
  readonly size: number;
  readonly isUpright: boolean;
}

/** Every text once: a rim behind letters is a text of its own. */
export const readTexts = async (page: PDFPageProxy): Promise<Written[]> => {
  const { items } = await page.getTextContent();
  const seen = new Map<string, Written>();
  for (const item of items) {
    if (!('str' in item) || item.str.trim() === '') continue;
    const [a, b, , , x, y] = item.transform as unknown as Matrix;
    const size = Math.hypot(a, b);
    const from = { x: x / POINT, y: y / POINT };
    const along = item.width / POINT / size;
    const to = { x: from.x + along * a, y: from.y + along * b };
    const text = item.str.replaceAll('\u00a0', ' ');
    seen.set(`${text} ${x} ${y}`, { text, from, to, size: size / POINT, isUpright: Math.abs(b) < 1e-9 });
  }
  return [...seen.values()];
};

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** 0 white to 1 black; rows from the top. */
  readonly darkness: Float32Array;
}

const DPI = 300;

export const renderPage = async (page: PDFPageProxy): Promise<Picture> => {
  const scale = DPI / 72;
  const { width, height } = page.getViewport({ scale });
  const canvas = createCanvas(Math.round(width), Math.round(height));
  // The page's lower left corner is a pixel's, also where the page is no whole number of pixels high (A4).
  const viewport = page.getViewport({ scale, offsetY: canvas.height - height });
  const context = canvas.getContext('2d');
  await page.render({
    canvas: canvas as unknown as HTMLCanvasElement,
    canvasContext: context as unknown as CanvasRenderingContext2D,
    viewport,
  }).promise;
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  const darkness = new Float32Array(canvas.width * canvas.height);
  for (let i = 0; i < darkness.length; i++) darkness[i] = 1 - data[4 * i + 1]! / 255;
  return { width: canvas.width, height: canvas.height, darkness };
};

/**
 * Where a thin line really is (mm along an axis): the centre of darkness within `reach` mm of where it is thought
 * to be, over the stretch [from, to] mm of the other axis. Positions from the page's lower left corner.
 */
export const seenLine = (
  picture: Picture,
  axis: 'x' | 'y',
  near: number,
  from: number,
  to: number,
  reach = 0.35,
): number => {
  const pixel = DPI / 25.4;
  let mass = 0;
  let moment = 0;
  const first = Math.round((near - reach) * pixel);
  const last = Math.round((near + reach) * pixel);
  for (let a = first; a <= last; a++) {
    for (let b = Math.round(from * pixel); b <= Math.round(to * pixel); b++) {
      const column = axis === 'x' ? a : b;
      const row = picture.height - 1 - (axis === 'x' ? b : a);
      const dark = picture.darkness[row * picture.width + column]!;
      mass += dark;
      moment += dark * (a + 0.5);
    }
  }
  if (!(mass > 1)) throw new Error(`No line is seen near ${axis} = ${near} mm.`);
  return moment / mass / pixel;
};
