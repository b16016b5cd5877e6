/**
 * A PDF document: pages of our own content, compressed by the caller's compressor, with pdf-lib for structure,
 * fonts and saving. The same calls give the same bytes on any machine, in any time zone.
 */

import {
  Duplex,
  type PDFDict,
  PDFDocument,
  type PDFFont,
  PDFHexString,
  PDFName,
  PDFRawStream,
  type PDFRef,
  PrintScaling,
} from 'pdf-lib';
import { fingerprint } from '../../document/index.ts';
import { LAYERS } from '../../drawing/index.ts';
import type { Box, Point } from '../../geometry/index.ts';
import { type Font, fontOf } from './font.ts';
import { addBookmarks, addPageLabels, layerGroups } from './navigation.ts';
import { pointsOf } from './numbers.ts';
import {
  type Correction,
  FONT_NAMES,
  type Form,
  NO_CORRECTION,
  type OpenContent,
  openContent,
  type PageContent,
} from './page-content.ts';
import { type FontBytes, type Typefaces, typefacesOf } from './typeface.ts';

/** zlib's format (RFC 1950), as PDF's FlateDecode wants it. */
export type Deflate = (bytes: Uint8Array) => Uint8Array;

export interface PdfOptions {
  readonly title: string;
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
  /** False where the pages are of no size that a tray holds. */
  readonly pickTray?: boolean | undefined;
}

interface PageOptions {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** What a viewer calls the page, and its bookmark. */
  readonly label: string;
  readonly correction?: Correction | undefined;
}

export interface Pdf {
  readonly faces: Typefaces;
  readonly page: (options: PageOptions) => PageContent;
  /** Something to be shown at many places; its box, and what is drawn in it, in mm from the place it is put. */
  readonly form: (box: Box, draw: (content: PageContent) => void, correction?: Correction) => Form;
  readonly finish: () => Promise<Uint8Array>;
}

/** Any fixed moment does: a file's date may not depend on when it was made. */
const DATE = new Date('2000-01-01T00:00:00Z');
const PRODUCER = 'swagwright';

/** Names that tell readers the fonts are subsets (ISO 32000-1, 9.6.4: six capitals and a plus). */
const SUBSET_NAMES = { regular: 'SWAGAA+DejaVuSans', bold: 'SWAGAB+DejaVuSans-Bold' } as const;

/** Letters stand by themselves, so that a text is as wide as it was measured. */
const PLAIN_LETTERS = { kern: false, liga: false, clig: false, calt: false };

interface PageDraft extends PageOptions {
  readonly content: OpenContent;
}

interface FormDraft {
  readonly name: string;
  readonly box: Box;
  readonly content: OpenContent;
  readonly correction: Correction;
}

export const startPdf = async (options: PdfOptions): Promise<Pdf> => {
  const faces = typefacesOf(options.fonts);
  const doc = await PDFDocument.create({ updateMetadata: false });
  doc.registerFontkit({ create: fontToEmbed });
  const embed = (bytes: Uint8Array, customName: string): Promise<PDFFont> =>
    doc.embedFont(bytes, { subset: true, customName, features: PLAIN_LETTERS });
  const regular = await embed(options.fonts.regular, SUBSET_NAMES.regular);
  const bold = await embed(options.fonts.bold, SUBSET_NAMES.bold);
  const encodeRegular = encoderOf(regular);
  const encodeBold = encoderOf(bold);
  const encode = (text: string, isBold: boolean): string => (isBold ? encodeBold : encodeRegular)(text);
  // pdf-lib cannot finish a subset without a glyph.
  encode(' ', false);
  encode(' ', true);

  const pages: PageDraft[] = [];
  const forms: FormDraft[] = [];
  return {
    faces,
    page: (page) => {
      const content = openContent(faces, encode, page.correction ?? NO_CORRECTION);
      pages.push({ ...page, content });
      return content;
    },
    form: (box, draw, correction = NO_CORRECTION) => {
      const content = openContent(faces, encode, { ...correction, fixed: { x: 0, y: 0 } });
      draw(content);
      const name = `X${forms.length + 1}`;
      forms.push({ name, box, content, correction });
      return { name };
    },
    finish: () => finish(doc, options, { regular, bold }, pages, forms),
  };
};

type Glyph = ReturnType<Font['glyphForCodePoint']>;

/**
 * A font as pdf-lib embeds it. Laying a text out asks for the rules of its script, which single letters have none of.
 * Which letter a shape is for, by which the paper is searched and copied, is said anew for each document: the font
 * keeps its shapes, and knows no letter for one that it first read as a part of another (the U of an Ü).
 */
const fontToEmbed = (bytes: Uint8Array): Font => {
  const font = fontOf(bytes);
  const forLetter = (glyph: Glyph, codePoints: readonly number[]): Glyph =>
    Object.create(glyph, { codePoints: { value: codePoints } });
  const layout: Font['layout'] = (text, features) => {
    if (!SINGLE_LETTERS.test(text)) {
      const run = font.layout(text, features);
      run.glyphs = run.glyphs.map((glyph) =>
        glyph.codePoints.length > 0
          ? glyph
          : forLetter(glyph, codePointsOf(font.stringsForGlyph(glyph.id)[0] ?? '')),
      );
      return run;
    }
    const glyphs = codePointsOf(text).map((letter) => forLetter(font.glyphForCodePoint(letter), [letter]));
    return { glyphs } as ReturnType<Font['layout']>;
  };
  return Object.create(font, { layout: { value: layout } });
};

const codePointsOf = (text: string): number[] => Array.from(text, (letter) => letter.codePointAt(0)!);

/**
 * Texts as a font's own codes. Letters stand by themselves, so one is asked for once and kept: setting a line anew
 * takes longer than drawing a hundred curves. What may join with its neighbours is left to the font.
 */
const encoderOf = (font: PDFFont): ((text: string) => string) => {
  const codes = new Map<string, string>();
  const codeOf = (letter: string): string => {
    let code = codes.get(letter);
    if (code === undefined) {
      code = font.encodeText(letter).asString();
      codes.set(letter, code);
    }
    return code;
  };
  return (text) =>
    SINGLE_LETTERS.test(text) ? `<${[...text].map(codeOf).join('')}>` : font.encodeText(text).toString();
};

/**
 * Latin letters, figures and signs, accents that are part of their letters included (Unicode, blocks up to U+024F),
 * punctuation and fractions.
 */
const SINGLE_LETTERS = /^[\u0020-\u007e\u00a0-\u00ac\u00ae-\u024f\u2010-\u2027\u2030-\u203a\u2150-\u215e]*$/;

type StreamEntries = Readonly<Record<string, string | number[] | PDFDict>>;

const finish = async (
  doc: PDFDocument,
  options: PdfOptions,
  fonts: { readonly regular: PDFFont; readonly bold: PDFFont },
  pages: readonly PageDraft[],
  forms: readonly FormDraft[],
): Promise<Uint8Array> => {
  const { context } = doc;
  const encoder = new TextEncoder();
  const stream = (text: string, entries: StreamEntries): PDFRef => {
    const bytes = options.deflate(encoder.encode(text));
    const dict = context.obj({ ...entries, Filter: 'FlateDecode', Length: bytes.length });
    return context.register(PDFRawStream.of(dict, bytes));
  };
  const fontResources = context.obj({
    [FONT_NAMES.regular]: fonts.regular.ref,
    [FONT_NAMES.bold]: fonts.bold.ref,
  });

  const texts: string[] = [];
  const streamOf = (draft: PageDraft | FormDraft, entries: StreamEntries): PDFRef => {
    const text = draft.content.operators();
    texts.push(text);
    return stream(text, entries);
  };

  const formRefs = new Map<string, PDFRef>();
  for (const form of forms) {
    const BBox = formBox(form);
    const Resources = context.obj({ Font: fontResources });
    const ref = streamOf(form, { Type: 'XObject', Subtype: 'Form', BBox, Resources });
    formRefs.set(form.name, ref);
  }
  const used = LAYERS.filter((id) => pages.some((page) => page.content.layers.has(id)));
  const groups = layerGroups(doc, used);

  const pageRefs: PDFRef[] = [];
  for (const draft of pages) {
    const page = doc.addPage([pointsOf(draft.width), pointsOf(draft.height)]);
    const properties = pick(groups, draft.content.layers);
    const xObjects = pick(formRefs, draft.content.forms);
    page.node.set(
      PDFName.of('Resources'),
      context.obj({ Font: fontResources, Properties: properties, XObject: xObjects }),
    );
    page.node.set(PDFName.of('Contents'), streamOf(draft, {}));
    pageRefs.push(page.ref);
  }

  const labels = pages.map((page) => page.label);
  addPageLabels(doc, labels);
  addBookmarks(doc, labels, pageRefs);
  describe(doc, options);
  const id = PDFHexString.of(fingerprint([options.title, ...labels, ...texts]));
  context.trailerInfo.ID = context.obj([id, id]);
  return doc.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
};

const pick = <Key extends string>(
  refs: ReadonlyMap<Key, PDFRef>,
  names: ReadonlySet<Key>,
): Record<string, PDFRef> => {
  const picked: Record<string, PDFRef> = {};
  for (const [name, ref] of refs) if (names.has(name)) picked[name] = ref;
  return picked;
};

const formBox = ({ box, correction }: FormDraft): number[] => {
  const corner = (p: Point): number[] => [pointsOf(p.x * correction.x), pointsOf(p.y * correction.y)];
  return [...corner({ x: box.minX, y: box.minY }), ...corner({ x: box.maxX, y: box.maxY })];
};

/** Title, fixed dates, and what the file asks of a viewer: no scaling, the right tray, one side of the paper. */
const describe = (doc: PDFDocument, options: PdfOptions): void => {
  doc.setTitle(options.title);
  doc.setCreator(PRODUCER);
  doc.setProducer(PRODUCER);
  doc.setCreationDate(DATE);
  doc.setModificationDate(DATE);
  doc.setLanguage('en');
  const viewer = doc.catalog.getOrCreateViewerPreferences();
  viewer.setPrintScaling(PrintScaling.None);
  viewer.setDuplex(Duplex.Simplex);
  viewer.setPickTrayByPDFSize(options.pickTray ?? true);
  viewer.setDisplayDocTitle(true);
};
