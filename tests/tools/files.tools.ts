/** Every PDF of every sample: sound to qpdf, painted by poppler without a word, read by pdf.js without a warning. */

import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it, vi } from 'vitest';
import { run } from '../cli/run.ts';
import { openPages } from '../output/pdf/read-back.ts';
import { runTool, withFolder } from './outside.ts';
import { lastPart, SAMPLE_FOLDER, SAMPLES } from './samples.ts';

/** All that the three have to say against a file, and how many pages they agree on. */
const judge = async (file: string): Promise<{ complaints: string[]; pages: number }> => {
  const complaints: string[] = [];
  const checked = runTool('qpdf', ['--check', file]);
  if (checked.code !== 0 || checked.err !== '') complaints.push(`qpdf: ${checked.err || checked.out}`);
  const counted = Number(runTool('qpdf', ['--show-npages', file]).out);
  const painted = await withFolder((folder) => {
    const told = runTool('pdftoppm', ['-gray', '-r', '20', file, join(folder, 'page')]);
    if (told.code !== 0 || told.err !== '') complaints.push(`pdftoppm: ${told.err}`);
    return runTool('find', [folder, '-name', '*.pgm']).out.trim().split('\n').length;
  });
  if (painted !== counted) complaints.push(`qpdf counts ${counted} pages, poppler paints ${painted}`);
  const said = await readByPdfJs(readFileSync(file));
  if (said.pages !== counted) complaints.push(`qpdf counts ${counted} pages, pdf.js reads ${said.pages}`);
  complaints.push(...said.warnings.map((text) => `pdf.js: ${text}`));
  return { complaints, pages: counted };
};

/** pdf.js says its warnings on the console, in words that begin so. */
const readByPdfJs = async (bytes: Uint8Array): Promise<{ warnings: string[]; pages: number }> => {
  const warnings: string[] = [];
  const listen = (...words: unknown[]): void => {
    warnings.push(words.map(String).join(' '));
  };
  const spies = (['log', 'warn', 'error'] as const).map((name) =>
    vi.spyOn(console, name).mockImplementation(listen),
  );
  try {
    const doc = await getDocument({ data: new Uint8Array(bytes), verbosity: VerbosityLevel.WARNINGS })
      .promise;
    for (let number = 1; number <= doc.numPages; number++) {
      const page = await doc.getPage(number);
      await page.getOperatorList();
      await page.getTextContent();
    }
    return { warnings, pages: doc.numPages };
  } catch (error) {
    return { warnings: [...warnings, String(error)], pages: 0 };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
};

/** Each kind of PDF that the command line makes of a plan. */
const FILES: readonly (readonly [
  string,
  (plan: string, pdf: string, part: readonly string[]) => readonly string[],
])[] = [
  ['mockup', (plan, pdf) => ['mockup', plan, '-o', pdf]],
  ['card', (plan, pdf) => ['card', plan, '-o', pdf]],
  ['fit sheet', (plan, pdf, part) => ['fit', plan, ...part, '--sheet', pdf]],
  ['audition', (plan, pdf, part) => ['audition', plan, ...part, '-o', pdf]],
  ['empty frames', (plan, pdf, part) => ['audition', plan, ...part, '--empty', '6', '-o', pdf]],
  ['one page', (plan, pdf) => ['draw', plan, '-o', pdf]],
];

describe.each(SAMPLES)('%s', (sample) => {
  it.each(FILES)('%s', async (_, command) => {
    await withFolder(async (folder) => {
      copyFileSync(join(SAMPLE_FOLDER, sample), join(folder, sample));
      const ran = await run(folder, command(sample, 'out.pdf', lastPart(sample)));
      expect(ran.code, ran.err).toBe(0);
      const judged = await judge(join(folder, 'out.pdf'));
      expect(judged.complaints).toEqual([]);
      expect(judged.pages).toBeGreaterThan(0);
    });
  });
});

describe('a template that comes along', () => {
  it.each([
    ['outline', ['template', 'baluster', '-o', 'out.pdf']],
    ['gallery', ['template', 'gallery', 'baluster', '-o', 'out.pdf']],
    ['capture sheet', ['template', 'sheet', '-o', 'out.pdf']],
  ])('%s', async (_, command) => {
    await withFolder(async (folder) => {
      const ran = await run(folder, command);
      expect(ran.code, ran.err).toBe(0);
      expect((await judge(join(folder, 'out.pdf'))).complaints).toEqual([]);
    });
  });
});

it('on every sheet of a sample, pdf.js finds words', async () => {
  await withFolder(async (folder) => {
    copyFileSync(join(SAMPLE_FOLDER, SAMPLES[0]!), join(folder, 'plan.yaml'));
    await run(folder, ['mockup', 'plan.yaml', '-o', 'out.pdf']);
    const doc = await openPages(readFileSync(join(folder, 'out.pdf')));
    expect(doc.numPages).toBeGreaterThan(1);
    for (let number = 1; number <= doc.numPages; number++)
      expect((await (await doc.getPage(number)).getTextContent()).items.length).toBeGreaterThan(3);
  });
});

it('a damaged file is told by all three', async () => {
  await withFolder(async (folder) => {
    copyFileSync(join(SAMPLE_FOLDER, SAMPLES[0]!), join(folder, 'plan.yaml'));
    await run(folder, ['card', 'plan.yaml', '-o', 'out.pdf']);
    const file = join(folder, 'out.pdf');
    const bytes = readFileSync(file);
    // Noise in the first compressed stream, and the table of places cut off.
    bytes.fill(0x5a, bytes.indexOf('stream\n') + 40, bytes.indexOf('stream\n') + 80);
    writeFileSync(file, bytes.subarray(0, bytes.lastIndexOf('xref') - 200));
    const { complaints } = await judge(file);
    for (const tool of ['qpdf', 'pdftoppm', 'pdf.js'])
      expect(
        complaints.some((text) => text.startsWith(tool)),
        `${tool}: ${complaints.join('; ')}`,
      ).toBe(true);
  });
});

it('a tool that is missing is an error', () => {
  expect(() => runTool('no-such-tool-is-installed', [])).toThrow('cannot be run');
});
