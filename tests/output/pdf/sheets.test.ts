import { Duplex, PDFDict, PDFDocument, PDFName, PrintScaling } from 'pdf-lib';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { ProblemError } from '../../../src/document/index.ts';
import { line, move, openPath, point } from '../../../src/geometry/index.ts';
import { startPdf, writeOnePage, writeSheets } from '../../../src/output/pdf/index.ts';
import { layOut, PAPER_IDS, type SheetPlan } from '../../../src/pagination/index.ts';
import { onFile } from '../../pagination/on-file.ts';
import {
  BORDER,
  drawingOf,
  scatter,
  stroked,
  swagBorder,
  swagStrip,
} from '../../pagination/sample-drawings.ts';
import { FONTS, openPages, POINT, type Raw, rawPages, WORDS, walkPaths } from './read-back.ts';

const balanced = (content: string): boolean => {
  let depth = 0;
  for (const [operator] of content.matchAll(/(?<![\w/<])[qQ](?![\w>])/g)) {
    depth += operator === 'q' ? 1 : -1;
    if (depth < 0) return false;
  }
  return depth === 0;
};

describe('a tiny file', () => {
  const tiny = async () => {
    // Stored, not compressed: a zlib header, one stored block, and the Adler-32 sum (RFC 1950 and 1951).
    const stored = (bytes: Uint8Array): Uint8Array => {
      let [a, b] = [1, 0];
      for (const byte of bytes) {
        a = (a + byte) % 65521;
        b = (b + a) % 65521;
      }
      const n = bytes.length;
      const head = [0x78, 0x01, 1, n & 255, n >> 8, ~n & 255, (~n >> 8) & 255];
      return Uint8Array.from([...head, ...bytes, b >> 8, b & 255, a >> 8, a & 255]);
    };
    const pdf = await startPdf({ title: 'Tiny', deflate: stored, fonts: FONTS });
    const content = pdf.page({ width: 25.4, height: 50.8, label: 'A1' });
    content.layer('stitch', () =>
      content.path(openPath([line(point(0, 0), point(25.4, 25.4))]), { width: 25.4 / 72, color: '#000000' }),
    );
    return pdf.finish();
  };

  it('has these bytes in its page, its layer and its catalogue', async () => {
    const text = Buffer.from(await tiny()).toString('latin1');
    expect(text.startsWith('%PDF-1.7\n')).toBe(true);
    const page = '1 j\n/OC /stitch BDC\n0 G 1 w 1 J [] 0 d\n0 0 m\n72 72 l\nS\nEMC\n';
    expect(text).toContain(
      `<<\n/Filter /FlateDecode\n/Length ${page.length + 11}\n>>\nstream\n\x78\x01\x01${String.fromCharCode(page.length)}\0`,
    );
    expect(text).toContain(page);
    expect(text).toContain('/MediaBox [ 0 0 72 144 ]');
    expect(text).toContain('/Type /OCG');
    expect(text).toMatch(/\/PageLabels <<\n\/Nums \[ 0 <<\n\/P <FEFF00410031>/);
    expect(text).not.toContain('UserUnit');
    expect(text).toContain('/CreationDate (D:20000101000000Z)');
  });

  it('has the same bytes each time', async () => {
    expect(Buffer.compare(Buffer.from(await tiny()), Buffer.from(await tiny()))).toBe(0);
  });
});

describe('same input, same bytes', () => {
  it('for sheets, in any time zone', async () => {
    const drawing = swagStrip(2, 220, 60);
    const plan = layOut(drawing, { paper: 'a4' });
    const first = await writeSheets(drawing, plan, WORDS);
    vi.stubEnv('TZ', 'Pacific/Kiritimati');
    const second = await writeSheets(drawing, layOut(swagStrip(2, 220, 60), { paper: 'a4' }), WORDS);
    vi.unstubAllEnvs();
    expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0);
  });

  it('and another identifier for other content', async () => {
    const idOf = async (title: string): Promise<string | undefined> => {
      const bytes = await writeOnePage(swagStrip(1, 100, 40), { ...WORDS, title });
      return /\/ID \[ <([0-9a-f]{32})> <\1> \]/i.exec(Buffer.from(bytes).toString('latin1'))?.[1];
    };
    const ids = [await idOf('one'), await idOf('two')];
    expect(ids[0]).toMatch(/^[0-9a-f]{32}$/i);
    expect(ids[0]).not.toBe(ids[1]);
  });
});

describe('page sizes', () => {
  // 72/25.4 points a mm, from the sizes in ISO 216 and ASME Y14.1; letter-a4 is 210 mm by 11 in.
  const sizes = {
    letter: [612, 792],
    a4: [595.2755906, 841.8897638],
    legal: [612, 1008],
    tabloid: [792, 1224],
    a3: [841.8897638, 1190.5511811],
    'letter-a4': [595.2755906, 792],
  } as const;

  it.each(PAPER_IDS)('%s, both ways round, to 0.001 pt', async (paper) => {
    for (const orientation of ['portrait', 'landscape'] as const) {
      const drawing = swagStrip(1, 100, 40);
      const bytes = await writeSheets(drawing, layOut(drawing, { paper, orientation }), WORDS);
      const [cover, sheet] = await rawPages(bytes);
      const [short, long] = sizes[paper];
      const [w, h] = orientation === 'portrait' ? [short, long] : [long, short];
      expect(sheet!.mediaBox.slice(0, 2)).toEqual([0, 0]);
      expect(Math.abs(sheet!.mediaBox[2]! - w)).toBeLessThanOrEqual(0.001);
      expect(Math.abs(sheet!.mediaBox[3]! - h)).toBeLessThanOrEqual(0.001);
      expect(cover!.mediaBox[3]).toBeCloseTo(long, 3);
    }
  });
});

describe.each([
  ['a strip in a row', swagStrip(4, 220, 60), { paper: 'letter' }],
  ['a strip turned', swagStrip(3, 220, 60), { paper: 'a4', orientation: 'portrait' }],
  ['a border', swagBorder(600, 110, 4), { paper: 'letter-a4' }],
  [
    'scattered ink, corrected',
    scatter(9, 420, 420, 40),
    { paper: 'letter', measured: { short: 0.994, long: 1.003 } },
  ],
] as const)('sheets of %s', (_name, drawing, options) => {
  let plan: SheetPlan;
  let raw: Raw[];
  let bytes: Uint8Array;

  beforeAll(async () => {
    plan = layOut(drawing, options);
    bytes = await writeSheets(drawing, plan, WORDS);
    raw = await rawPages(bytes);
  });

  it('are a cover and one page a sheet, saves and restores balanced', () => {
    expect(raw).toHaveLength(plan.sheets.length + 1);
    for (const { content, forms } of raw) {
      for (const stream of [content, ...Object.values(forms)]) {
        expect(balanced(stream)).toBe(true);
        expect(stream).not.toMatch(/NaN|Infinity|e-\d|-0(?![.\d])/);
        expect(stream.match(/\bBDC\b/g)?.length).toBe(stream.match(/\bEMC\b/g)?.length);
      }
    }
  });

  it('show a point of the drawing at the same place by way of every sheet that shows it', () => {
    // The first point of each stitched path, looked for among the page's own numbers.
    let shown = 0;
    const points = drawing.layers.stitch.flatMap((item) =>
      item.kind === 'path' && item.path.pieces[0] ? [item.path.pieces[0].from] : [],
    );
    for (const p of points) {
      for (const [index, sheet] of plan.sheets.entries()) {
        const { window: w } = sheet;
        if (!(p.x > w.minX && p.x < w.maxX && p.y > w.minY && p.y < w.maxY)) continue;
        const at = onFile(plan, move(sheet.place, p));
        const starts = [...raw[index + 1]!.content.matchAll(/(\S+) (\S+) m\n/g)].map((m) => [
          Number(m[1]),
          Number(m[2]),
        ]);
        const nearest = Math.min(
          ...starts.map(([x, y]) => Math.max(Math.abs(x! - at.x * POINT), Math.abs(y! - at.y * POINT))),
        );
        expect(nearest).toBeLessThanOrEqual(0.001);
        shown++;
      }
    }
    expect(shown).toBeGreaterThanOrEqual(Math.min(points.length, 3));
  });

  it('put each cross where both sheets show the same point of the drawing', async () => {
    const pages = await openPages(bytes);
    let crosses = 0;
    for (const [index, sheet] of plan.sheets.entries()) {
      const wanted = sheet.edges.flatMap((e) =>
        e.crosses.map((c) => onFile(plan, move(sheet.place, c.drawing))),
      );
      if (wanted.length === 0) continue;
      const paths = await walkPaths(await pages.getPage(index + 2));
      // A cross is two strokes through one point: four ends whose middle it is.
      const middles = paths
        .filter((p) => !p.curves && p.points.length === 4)
        .map(({ points: q }) => ({
          x: (q[0]!.x + q[1]!.x + q[2]!.x + q[3]!.x) / 4,
          y: (q[0]!.y + q[1]!.y + q[2]!.y + q[3]!.y) / 4,
        }));
      for (const at of wanted) {
        const off = Math.min(
          ...middles.map((m) => Math.max(Math.abs(m.x - at.x * POINT), Math.abs(m.y - at.y * POINT))),
        );
        expect(off).toBeLessThanOrEqual(0.002);
        crosses++;
      }
    }
    expect(crosses).toBeGreaterThan(3);
  });

  it('name the sheet, its neighbours and how to print, in words that a reader finds', async () => {
    const pages = await openPages(bytes);
    for (const [index, sheet] of plan.sheets.entries()) {
      const page = await pages.getPage(index + 2);
      const words = (await page.getTextContent()).items.map((i) => ('str' in i ? i.str : '')).join(' ');
      expect(words).toContain(sheet.label);
      for (const edge of sheet.edges) expect(words).toContain(edge.neighbour);
      expect(words).toMatch(/Print at 100 % \/ actual size, not fit to\s+page; borderless off; one-sided/);
      expect(words).toMatch(/94, 96 or 97, the\s+viewer shrank it/);
      expect(words).toContain(plan.paper.name);
      // What was not corrected says nothing of it.
      for (const factor of Object.values(plan.factors))
        expect(words.includes(factor.toFixed(4))).toBe(factor !== 1);
    }
  });
});

describe('what the file says about itself', () => {
  const drawing = swagStrip(2, 220, 60);
  const written = async (paper: 'letter' | 'letter-a4') =>
    PDFDocument.load(await writeSheets(drawing, layOut(drawing, { paper }), WORDS), {
      updateMetadata: false,
    });

  it('asks for no scaling, the right tray and one side, and shows its title and language', async () => {
    const doc = await written('letter');
    const viewer = doc.catalog.getViewerPreferences()!;
    expect(viewer.getPrintScaling()).toBe(PrintScaling.None);
    expect(viewer.getPickTrayByPDFSize()).toBe(true);
    expect(viewer.getDuplex()).toBe(Duplex.Simplex);
    expect(viewer.getDisplayDocTitle()).toBe(true);
    expect(doc.getTitle()).toBe('Newel border');
    expect(doc.catalog.get(PDFName.of('Lang'))?.toString()).toContain('en');
    const both = await written('letter-a4');
    expect(both.catalog.getViewerPreferences()!.getPickTrayByPDFSize()).toBe(false);
  });

  it('has layers by id, all on, and each page’s label', async () => {
    const bytes = await writeSheets(drawing, layOut(drawing, { paper: 'letter' }), WORDS);
    const pages = await openPages(bytes);
    const config = await pages.getOptionalContentConfig();
    const groups = [...config] as [string, { name: string; visible: boolean }][];
    expect(groups.map(([, g]) => g.name)).toEqual(['fill', 'border', 'channel', 'stitch', 'marks', 'notes']);
    expect(groups.every(([, g]) => g.visible)).toBe(true);
    const labels = await pages.getPageLabels();
    expect(labels).toEqual(['Cover', 'A1', 'A2']);
    const outline = await pages.getOutline();
    expect(outline.map((o: { title: string }) => o.title)).toEqual(['Cover', 'A1', 'A2']);
  });

  it('holds each font once, as a subset', async () => {
    const doc = await written('letter');
    const fonts = doc.context
      .enumerateIndirectObjects()
      .flatMap(([, o]) =>
        o instanceof PDFDict && o.get(PDFName.of('Subtype'))?.toString() === '/Type0' ? [o] : [],
      );
    expect(fonts.map((f) => f.get(PDFName.of('BaseFont'))?.toString()).sort()).toEqual([
      '/SWAGAA+DejaVuSans',
      '/SWAGAB+DejaVuSans-Bold',
    ]);
  });

  it('keeps a title of any script and length whole in its properties', async () => {
    const title = `Überwurf — ${'sehr '.repeat(60)}lang 𓀀`;
    const bytes = await writeOnePage(drawing, { ...WORDS, title });
    const doc = await PDFDocument.load(bytes, { updateMetadata: false });
    expect(doc.getTitle()).toBe(title);
  });
});

describe('each sheet', () => {
  it('holds only the paths that touch it, and those whole', async () => {
    const short = (x: number) => stroked(openPath([line(point(x, 0), point(x + 5, 0))]), BORDER);
    const long = stroked(openPath([line(point(0, 10), point(600, 10))]), BORDER);
    const drawing = drawingOf('lines', { border: [short(0), short(300), short(595), long] });
    const plan = layOut(drawing, { paper: 'letter', orientation: 'landscape' });
    expect(plan.sheets.length).toBe(3);
    const raw = await rawPages(await writeSheets(drawing, plan, WORDS));
    for (const [index, sheet] of plan.sheets.entries()) {
      const layer = /\/OC \/border BDC([\s\S]*?)EMC/.exec(raw[index + 1]!.content)![1]!;
      const lengths = [...layer.matchAll(/(\S+) \S+ m\n(\S+) \S+ l/g)].map(
        (m) => Number(m[2]) - Number(m[1]),
      );
      const touching = [0, 300, 595].filter((x) => x + 5 > sheet.window.minX && x < sheet.window.maxX);
      expect(lengths.filter((l) => Math.abs(l - 600 * POINT) < 0.01)).toHaveLength(1);
      expect(lengths.filter((l) => Math.abs(l - 5 * POINT) < 0.01)).toHaveLength(touching.length);
    }
  });
});

describe('one page', () => {
  it('is the drawing at true size with room round it', async () => {
    const drawing = drawingOf('line', {
      stitch: [stroked(openPath([line(point(0, 0), point(400, 0))]), BORDER)],
    });
    const [page] = await rawPages(await writeOnePage(drawing, WORDS));
    const [, x0, x1] = /\/OC \/stitch BDC[\s\S]*?(\S+) \S+ m\n(\S+) \S+ l/.exec(page!.content)!;
    expect(Math.abs(Number(x1) - Number(x0) - 400 * POINT)).toBeLessThanOrEqual(0.001);
    expect(page!.mediaBox[2]).toBeGreaterThan(400 * POINT);
    expect(balanced(page!.content)).toBe(true);
  });

  it('ends at 200 in, with a problem that says what to do', async () => {
    const line5m = (length: number) =>
      drawingOf('long', { stitch: [stroked(openPath([line(point(0, 0), point(length, 0))]), BORDER)] });
    await expect(writeOnePage(line5m(5100), WORDS)).rejects.toThrow(ProblemError);
    await expect(writeOnePage(line5m(5100), WORDS)).rejects.toThrow(/true-size sheets/);
    await expect(writeOnePage(drawingOf('empty', {}), WORDS)).rejects.toThrow(/nothing to print/);
    const [page] = await rawPages(await writeOnePage(line5m(5000), WORDS));
    expect(page!.mediaBox[2]).toBeLessThanOrEqual(14400);
  });

  it('makes up for the printer along the long and the short edge', async () => {
    const drawing = drawingOf('cross', {
      stitch: [
        stroked(openPath([line(point(0, 0), point(400, 0))]), BORDER),
        stroked(openPath([line(point(0, 0), point(0, 300))]), BORDER),
      ],
    });
    const [page] = await rawPages(
      await writeOnePage(drawing, { ...WORDS, measured: { short: 1.01, long: 0.99 } }),
    );
    const layer = /\/OC \/stitch BDC([\s\S]*?)EMC/.exec(page!.content)![1]!;
    const [across, up] = [...layer.matchAll(/(\S+) (\S+) m\n(\S+) (\S+) l/g)].map((m) =>
      m.slice(1).map(Number),
    );
    expect((across![2]! - across![0]!) * 0.99).toBeCloseTo(400 * POINT, 2);
    expect((up![3]! - up![1]!) * 1.01).toBeCloseTo(300 * POINT, 2);
  });
});

describe('the one page of a nearly square drawing', () => {
  const lines = (width: number, height: number) =>
    drawingOf('square', {
      stitch: [
        stroked(openPath([line(point(0, 0), point(width, 0))]), BORDER),
        stroked(openPath([line(point(0, 0), point(0, height))]), BORDER),
      ],
    });
  // With the room for words below, the first is upright by 2.5 mm and the second lies by 2.5 mm: 1 % makes it the other.
  it.each([
    ['upright', lines(400, 390), { short: 0.99, long: 1 }],
    ['upright', lines(400, 390), { short: 1, long: 1.01 }],
    ['lying', lines(400, 385), { short: 0.99, long: 1 }],
    ['lying', lines(400, 385), { short: 1, long: 1.01 }],
  ] as const)('%s stays so, and each edge has its own factor', async (way, drawing, measured) => {
    for (const error of [{ short: 1, long: 1 }, measured]) {
      const bytes = await writeOnePage(drawing, { ...WORDS, measured: error });
      const [page] = await rawPages(bytes);
      const [width, height] = page!.mediaBox.slice(2) as [number, number];
      expect(width < height ? 'upright' : 'lying').toBe(way);
      const layer = /\/OC \/stitch BDC([\s\S]*?)EMC/.exec(page!.content)![1]!;
      const across = /(\S+) \S+ m\n(\S+) \S+ l/.exec(layer)!.slice(1).map(Number) as [number, number];
      const edge = way === 'upright' ? error.short : error.long;
      expect((across[1] - across[0]) * edge).toBeCloseTo(400 * POINT, 2);
      const { items } = await (await (await openPages(bytes)).getPage(1)).getTextContent();
      const words = items.map((item) => ('str' in item ? item.str : '')).join(' ');
      expect(words).toContain(
        way === 'upright'
          ? 'The paper’s short edge runs across, its long edge up.'
          : 'The paper’s long edge runs across, its short edge up.',
      );
    }
  });
});

describe('the cover', () => {
  it('goes on overleaf rather than losing a caution', async () => {
    const cautions = Array.from({ length: 60 }, (_, i) => `Caution ${i + 1}: ${'take care '.repeat(12)}`);
    const drawing = swagStrip(1, 100, 40);
    const bytes = await writeSheets(drawing, layOut(drawing, { paper: 'letter' }), { ...WORDS, cautions });
    const pages = await openPages(bytes);
    let words = '';
    for (let i = 1; i <= pages.numPages; i++) {
      const content = await (await pages.getPage(i)).getTextContent();
      words += content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    }
    for (let i = 1; i <= 60; i++) expect(words).toContain(`Caution ${i}:`);
  });
});

describe('a compressor that fails', () => {
  it('fails the whole, with its own words', async () => {
    const broken = (): Uint8Array => {
      throw new Error('no room');
    };
    await expect(writeOnePage(swagStrip(1, 100, 40), { ...WORDS, deflate: broken })).rejects.toThrow(
      'no room',
    );
  });
});
