/** What the card says, by its meaning: the same words go on the terminal and on paper. */

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { deflateSync } from 'node:zlib';
import { PDFDocument } from 'pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { formatLength, MM_PER_INCH, roundLength } from '../../../src/length/index.ts';
import { type Card, cardAsData, cardOf, writeTextCard } from '../../../src/output/card/index.ts';
import { writeCardPdf } from '../../../src/output/card-sheets/index.ts';
import { CAUTIONS as ON_PAPER } from '../../../src/output/mockup/cautions.ts';
import { pageSetup } from '../../../src/output/pdf/index.ts';
import { evenMargins, PAPERS } from '../../../src/pagination/index.ts';
import { readPlan } from '../../../src/plan/index.ts';
import {
  designOf,
  placingOf,
  ringMeasures,
  roundFrame,
  twoDigits,
  WASTAGE,
} from '../../../src/swag/index.ts';
import type { Template } from '../../../src/template/index.ts';
import { planOf, profile, search, templateOf } from '../../swag/fit-helpers.ts';

const CAUTIONS = ['Fingers flat.', 'Needle down first.'];

const made = (text: string, template: Template) => {
  const plan = planOf(text);
  const best = search(plan, [template]).results[0]!;
  const design = designOf(best.field, best.fit);
  return { plan, design, card: cardOf(design, plan, CAUTIONS) };
};

const wordsOf = (card: Card, id: Card['sections'][number]['id']): string =>
  (card.sections.find((s) => s.id === id)?.blocks ?? [])
    .map((b) => (b.kind === 'table' ? b.rows.map((r) => r.join(' | ')).join('\n') : b.text))
    .join('\n');

const BALUSTER_STRIP = `layout: { strip: { length: 36, width: 6, margin: 1/4 } }
channels: { outward: [1/4, 3/8], inward: [3/4, 1/8] }
`;
const HALF =
  '{ setting: crown-on-centre, side: inside, direction: heel-first, from: 2, to: crown, repeats: 5 }';

describe('the card', () => {
  const { card, design, plan } = made(`${BALUSTER_STRIP}swag: ${HALF}\n`, profile('baluster'));

  it('says where a break stands beside the start mark, and that a notch makes it farther', () => {
    const back = wordsOf(card, 'set');
    expect(back).toMatch(
      /The start of section 2 is not on the start mark itself.* 11\/32 in from the needle .*notch/,
    );
    // Where it lies is said once, beside the other places.
    expect(wordsOf(card, 'stands')).toMatch(/^The start of section 2: \S+ past, \S+ up\.$/m);
    expect(back).not.toContain('back from');
    expect(back).toMatch(/inside the swag, between stitching and seam, face up/);
    expect(back).toMatch(/Second half.*turn the template over/);
    expect(back).toMatch(/Draw the start line 1\/4 in from the seam/);
  });

  it('puts the part’s own end to the start mark, and says where the heel then hangs', () => {
    const back = wordsOf(card, 'set');
    expect(back).toMatch(/face up, the start of section 2 at the start mark\./);
    const { end } = placingOf(design.cells[0]!);
    // Section 1 is about an inch long and leans a little, and all of it lies before the start mark.
    expect(end.along).toBeLessThan(-0.9 * MM_PER_INCH);
    expect(back).toContain(
      `The rest of the template lies beyond it: its heel is ${formatLength(-end.along, plan.marks.style)} before the start mark.`,
    );
    const whole = made(
      `${BALUSTER_STRIP}swag: { from: 1, to: crown, direction: heel-first }\n`,
      profile('baluster'),
    );
    expect(wordsOf(whole.card, 'set')).toMatch(/the heel at the start mark\.$/m);
  });

  it('counts the fills in what is stitched', () => {
    const filled = made(
      `${BALUSTER_STRIP}swag: ${HALF}\nfills: { background: { kind: crosshatch, spacing: 1/2 } }\n`,
      profile('baluster'),
    );
    const of = (c: Card): number => Number(wordsOf(c, 'thread').match(/Stitched length: ([\d.]+) yd/)![1]);
    expect(of(filled.card)).toBeGreaterThan(of(card) + 1);
    expect(wordsOf(filled.card, 'thread')).toMatch(/swags .*channels .*fills [\d.]+ yd/);
    expect(wordsOf(card, 'thread')).not.toContain('fills');
  });

  it('says where the 0 of the tape is on a border with a margin, and how high lobes stand', () => {
    const turned = made(
      'layout: { border: { width: 7, inner: { top: 54 3/8, right: 67 1/2, bottom: 54 1/8, left: 67 3/4 }, margin: 1/2, corners: turn } }\nswag: { from: vase, repeats: [12, 15, 12, 15] }\n',
      profile('baluster'),
    );
    expect(wordsOf(turned.card, 'marks')).toMatch(
      /0 at the named corner of the start lines: where the start lines of two sides cross, and not at the corner of the seam/,
    );
    expect(turned.card.summary.join(' ')).toMatch(/in deep at the crown, .* in at its highest/);
  });

  it('says where to pause and what cannot be reached', () => {
    expect(wordsOf(card, 'pauses')).toMatch(/The notch at the start of section 3 \(vase\)/);
    expect(wordsOf(card, 'pauses')).not.toMatch(/start of section 2/);
    expect(wordsOf(card, 'pauses')).toMatch(/does not reach .* 11\/32 in from the deepest place/);
  });

  it('says for each channel what to lay on the last stitching', () => {
    // Etched lines at 1/8, 1/4 and 3/8 in, a clearance of 1/4 in (common practice, no source).
    const lines = wordsOf(card, 'channels').split('\n');
    expect(lines.find((l) => l.startsWith('outward 1'))).toMatch(/the edge itself/);
    expect(lines.find((l) => l.startsWith('outward 2'))).toMatch(/the line etched 1\/8 in inside the edge/);
    expect(lines.find((l) => l.startsWith('inward 1'))).toMatch(/no etched line serves.*1\/2 in .*spacer/i);
    expect(lines.find((l) => l.startsWith('inward 2'))).toMatch(/narrower than the foot/);
  });

  it('says once how channels of one width are stitched', () => {
    const { card: alike } = made(
      BALUSTER_STRIP.replace(/channels.*/, 'channels: { outward: [1/4, 3/8], inward: [1/4] }'),
      profile('baluster'),
    );
    expect(wordsOf(alike, 'channels').split('\n').slice(1, 3)).toEqual([
      'outward 1 and inward 1, 1/4 in wide: ride the foot along the last stitching, or lay the edge itself on it.',
      'outward 2, 3/8 in wide: lay the line etched 1/8 in inside the edge on the last stitching (1/8 in + 1/4 in).',
    ]);
  });

  it('says that the thread is an estimate, what it is reckoned with, and no more than two digits of it', async () => {
    const thread = wordsOf(card, 'thread');
    expect(thread).toMatch(/estimate/);
    // 2 + 2·T·S units of thread for one of seam (see swag/thread.ts): 4.54 at 1/8 in and a stitch of 2.5 mm, over 2.5.
    expect(thread).toMatch(/A quilt 1\/8 in thick takes 1\.8 times as much/);
    expect((await readFile('README.md', 'utf8')).replaceAll(/\s+/g, ' ')).toMatch(
      /2\.5 times the line and 15 % more for starts and ends, as published tables say for the lockstitch, type 301 of ISO 4915/,
    );
    const figures = [...thread.matchAll(/([\d.,]+) yd (?:on top|in the bobbin)/g)].map((m) => m[1]!);
    expect(figures.length).toBe(2);
    for (const f of figures)
      expect(f.replace(/[.,]|^0+/g, '').replace(/0+$/, '').length).toBeLessThanOrEqual(2);
  });

  it('names the sides that are alike once for each kind', () => {
    const plan = planOf(
      'layout: { border: { width: 8, inner: { top: 60, right: 72, bottom: 61, left: 72 }, margin: 1/2, corners: meet } }\nswag: { alternate: [{}, {}] }\n',
    );
    const { field, fit } = search(plan, [profile('baluster')]).results[0]!;
    const words = wordsOf(cardOf(designOf(field, fit), plan, CAUTIONS), 'thread');
    const [, each] = words.match(/One swag: (.*?)\. About/)!;
    for (const kind of ['kind 1', 'kind 2']) expect(each!.split(kind).length, each).toBeLessThan(4);
    expect(each).toMatch(/kind 1 (?:\(.* and .*\)|\w+)/);
  });

  it('counts whole spools and bobbins', () => {
    const { card } = made(
      'layout: { border: { width: 9, inner: 80, margin: 1/2 } }\nfills: { swag: { kind: crosshatch, spacing: 1/4 } }\n',
      profile('baluster'),
    );
    const [, top, spools, below, bobbins] = wordsOf(card, 'thread').match(
      /([\d,]+) yd on top \((\d+) spools? of 500 yd\) and ([\d,]+) yd in the bobbin \((\d+) bobbins? of 60 yd\)/,
    )!;
    expect(Number(below)).toBeGreaterThan(120);
    expect(Number(spools)).toBe(Math.ceil(Number(top) / 500));
    // What is written is rounded: where it is just over a whole number of bobbins it may take one more.
    expect(Number(bobbins)).toBeGreaterThanOrEqual(Math.ceil((0.95 * Number(below)) / 60));
    expect(Number(bobbins)).toBeLessThanOrEqual(Math.ceil((1.05 * Number(below)) / 60));
  });

  it.each([
    // One yard is 36 in (international yard and pound agreement of 1959: 0.9144 m).
    ['units: in', 25.4 * 36, 'yd'],
    ['units: mm', 1000, 'm'],
  ])('says the stitched length in yards of 36 in, or metres: %s', (units, each, name) => {
    const { card } = made(
      `${units}\nlayout: { strip: { length: 216 in, width: 6 in } }\nswag: { repeats: 18, gap: 0, setting: crown-on-centre, side: inside, direction: heel-first }\n`,
      templateOf('units: in\nedge: [{ start: [0, 0] }, { arc: { to: [6, 0], rise: 1 1/2 } }]', 'arc'),
    );
    // 36 halves, each an arc of radius 4 in through 4·atan(1/2) (Machinery's Handbook, 31st ed., p. 83).
    const whole = 36 * 16 * Math.atan(1 / 2) * MM_PER_INCH;
    const thread = wordsOf(card, 'thread');
    expect(thread).toContain(`Stitched length: ${(whole / each).toFixed(1)} ${name} in all.`);
    // 2.5 times the line, half of it above, and the waste.
    const half = (whole * 2.5 * (1 + WASTAGE)) / 2 / each;
    const [spool, bobbin] = name === 'yd' ? [500, 60] : [450, 55];
    expect(thread).toContain(
      `${twoDigits(half)} ${name} on top (1 spool of ${spool} ${name}) and ${twoDigits(half)} ${name} in the bobbin (1 bobbin of ${bobbin} ${name})`,
    );
  });

  it('calls a foot what it is, and rounds nothing that is not measured with a tape', () => {
    const { card } = made(
      `units: mm\n${BALUSTER_STRIP.replace('36,', '914.4,')
        .replace('6,', '152.4,')
        .replace('1/4', '6.35')
        .replace(/channels.*/, 'channels: { outward: [6.35, 9.53] }')}`,
      profile('baluster'),
    );
    expect(card.summary[0]).toMatch(/Baluster, 6\.35 mm thick.* Foot: 6\.35 mm from the needle/);
    expect(wordsOf(card, 'channels')).toContain(
      'outward 1, 6.35 mm wide: ride the foot along the last stitching, or lay the edge itself on it.',
    );
    expect(wordsOf(card, 'channels')).not.toContain('6.5 mm');
  });

  it('gives the cautions last, as text holds them all', () => {
    expect(card.sections.at(-1)).toMatchObject({ id: 'cautions' });
    const text = writeTextCard(card, 90);
    for (const caution of CAUTIONS) expect(text).toContain(caution);
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it('gives the same marks as data as in its tables', () => {
    const data = JSON.parse(JSON.stringify(cardAsData(design, plan)));
    expect(data.units).toBe('mm and degrees');
    const [side] = data.sides;
    const stops = side.marks.filter((m: { kind: string }) => m.kind === 'stop');
    const table = card.sections.find((s) => s.id === 'marks')!.blocks.find((b) => b.kind === 'table');
    if (table?.kind !== 'table') throw new Error('no table');
    expect(table.rows.length).toBe(stops.length);
    expect(side.marks.at(-1)).toEqual({ kind: 'end', repeat: null, at: 914.4, rounded: 914.4 });
    for (const [i, row] of table.rows.entries())
      if (row[3] !== 'end') expect(inchesOf(row[3]!)).toBeCloseTo(stops[i].rounded / MM_PER_INCH, 9);
    // Clockwise rounding is said once, in mm: half of 1/16 in.
    expect(data.markError).toBeCloseTo(MM_PER_INCH / 32, 12);
    expect(data.placing[0].start.back).toBeGreaterThan(6.35);
  });
});

/** `12 3/16` */
const inchesOf = (text: string): number =>
  text.split(' ').reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);

describe('other settings', () => {
  const newel = profile('newel');
  const strip = 'layout: { strip: { length: 48, width: 5, margin: 3/8 } }\n';

  it('gives the guide line for the flat, and says that it is not for the stitching', () => {
    const { card } = made(
      `${strip}swag: { setting: flat-on-guide, side: inside, direction: heel-first, from: 1 }\n`,
      newel,
    );
    // The needle starts on the start line, 3/8 in from the seam; the flat lies a clearance of 1/4 in below it.
    expect(wordsOf(card, 'set')).toMatch(
      /guide line 1\/8 in from the seam: it is for the template's edge and not for the stitching/,
    );
    expect(wordsOf(card, 'set')).toMatch(/Lay the flat of section 1 along it/);
  });

  it('names the etched line and how it lies', () => {
    const { card } = made(
      `${strip}swag: { setting: alignment-line, laid: square, from: A, side: inside }\n`,
      newel,
    );
    expect(wordsOf(card, 'set')).toMatch(/Lay line A on the start mark, square to the seam/);
  });

  it('names the outer seam, and the corner from which each side is measured', () => {
    const { card } = made(
      'layout: { border: { width: 6, inner: 40, margin: 1/2, from: outer, corners: meet } }\nswag: { setting: crown-on-centre }\n',
      profile('finial'),
    );
    expect(wordsOf(card, 'set')).toMatch(/1\/2 in from the outer seam/);
    const titles = card.sections
      .flatMap((s) => s.blocks)
      .flatMap((b) => (b.kind === 'table' && b.title !== undefined ? [b.title] : []));
    // Each side is 40 in and twice the width less the margin longer: 40 + 2 · 5 1/2 = 51 in.
    expect(titles).toEqual([
      'Top 51 in, from top right',
      'Right 51 in, from bottom right',
      'Bottom 51 in, from bottom left',
      'Left 51 in, from top left',
    ]);
  });
});

describe('the card of a frame', () => {
  const ALL = ['set', 'stands', 'marks', 'sew', 'pauses', 'channels', 'thread'] as const;
  const said = ({ card }: ReturnType<typeof made>): string => ALL.map((id) => wordsOf(card, id)).join('\n');

  it.each([
    'frame: { count: 8, around: 9, clearance: 1/2 }',
    'frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 18, corners: meet }',
  ])('speaks of no seam: %s', (layout) => {
    const round = made(`layout: { ${layout} }\nchannels: { outward: [1/4] }\n`, profile('finial'));
    expect(said(round)).toMatch(/towards you/);
    expect(said(round)).not.toMatch(/seam/);
    expect(said(made(`${BALUSTER_STRIP}swag: ${HALF}\n`, profile('baluster')))).toMatch(/seam/);
  });

  it('puts the part’s own end to the start mark round a motif too, and says where the heel then hangs', () => {
    const wreath = (swag: string) =>
      made(
        `layout: { frame: { count: 12, around: 11, clearance: 1/2 } }\nswag: { ${swag} }\n`,
        profile('finial'),
      );
    const later = wreath('from: 3, to: crown, setting: crown-on-centre, side: inside, direction: heel-first');
    const { start, end } = placingOf(later.design.cells[0]!);
    expect(start?.label).toBe('section 3 (bud)');
    expect(wordsOf(later.card, 'set')).toContain(
      `face up, the start of section 3 (bud) at the start mark. The rest of the template lies beyond it: its heel is ${formatLength(-end.along, later.plan.marks.style)} before`,
    );
    const whole = wreath('from: heel, to: 1, setting: crown-on-centre, side: inside, direction: heel-first');
    expect(wordsOf(whole.card, 'set')).toContain('face up, the heel at the start mark.');
  });

  it('gives a ray on which one swag stops and the next starts one angle', () => {
    for (const count of [5, 7, 12, 16, 17, 31, 48, 64]) {
      const { card } = made(
        `layout: { frame: { count: ${count}, around: ${count}, clearance: 1/2 } }\nswag: { gap: 0 }\n`,
        profile('finial'),
      );
      const table = card.sections.find((s) => s.id === 'marks')!.blocks.find((b) => b.kind === 'table');
      if (table?.kind !== 'table') throw new Error('no table');
      expect(table.rows).toHaveLength(count);
      for (const [i, [, , , stop]] of table.rows.entries())
        expect(table.rows[(i + 1) % count]![1], `${count}: ${i + 1}`).toBe(stop);
    }
  });

  it('steps off the circles that she draws, which are the rounded ones', () => {
    let apart = 0;
    for (const count of [5, 6, 7, 8, 9, 11, 13])
      for (const around of ['9', '10 1/2', '10 5/8', '11 7/16']) {
        const { design, plan } = made(
          `layout: { frame: { count: ${count}, around: ${around}, clearance: 3/8 } }\n`,
          profile('finial'),
        );
        const { start, crown, crownChord, startChord, reach, half } = ringMeasures(design, plan.marks.style)!;
        // Machinery's Handbook, 31st ed., p. 82: the side of a regular polygon of n sides is 2·R·sin(180°/n).
        const side = 2 * crown * Math.sin(Math.PI / count);
        const most = MM_PER_INCH / 32 + 1e-9;
        expect(Math.abs(crownChord - side)).toBeLessThan(most);
        expect(Math.abs(startChord - 2 * start * Math.sin(half))).toBeLessThan(most);
        const across = Math.hypot(start * Math.sin(half), crown - start * Math.cos(half));
        expect(Math.abs(reach - across)).toBeLessThan(most);
        if (
          Math.abs(
            roundLength(2 * roundFrame(design)!.crownRadius * Math.sin(Math.PI / count), plan.marks.style) -
              crownChord,
          ) > 1e-9
        )
          apart++;
      }
    // It makes a difference.
    expect(apart).toBeGreaterThan(0);
  });

  it('says from where the start line of a block’s frame is measured', () => {
    const square = made(
      'layout: { frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 18, corners: meet } }\n',
      profile('finial'),
    );
    expect(said(square)).toMatch(/Draw the start line 1\/2 in from the edge of the block/);
    expect(said(square)).toMatch(/not at the corner of the block/);
  });
});

describe('the card on paper', () => {
  const require = createRequire(import.meta.url);
  const font = (name: string): Promise<Uint8Array> =>
    readFile(require.resolve(`dejavu-fonts-ttf/ttf/${name}`));
  const pdfOf = async ({ card, design }: ReturnType<typeof made>, paper: 'letter' | 'a4') =>
    writeCardPdf(card.title, [{ card, design }], {
      setup: pageSetup(PAPERS[paper], 'portrait', evenMargins(12.7)),
      deflate: (bytes) => deflateSync(bytes),
      fonts: { regular: await font('DejaVuSans.ttf'), bold: await font('DejaVuSans-Bold.ttf') },
    });
  const textsOf = async (bytes: Uint8Array) => {
    const doc = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    const pages = [];
    for (let i = 1; i <= doc.numPages; i++) {
      const page = await doc.getPage(i);
      const { items } = await page.getTextContent();
      const [, , width = 0, height = 0] = page.view;
      pages.push({
        width,
        height,
        items: items.flatMap((t) => ('str' in t && t.str.trim() !== '' ? [t] : [])),
      });
    }
    return pages;
  };

  /** Letters of different words lie nowhere on one another. */
  const expectApart = (items: Awaited<ReturnType<typeof textsOf>>[number]['items']): void => {
    for (const [i, a] of items.entries())
      for (const b of items.slice(i + 1)) {
        const [ax = 0, ay = 0] = a.transform.slice(4) as number[];
        const [bx = 0, by = 0] = b.transform.slice(4) as number[];
        // Letters with a white rim are written twice, in one place.
        if (a.str === b.str && ax === bx && ay === by) continue;
        const apart = ax + a.width <= bx + 0.5 || bx + b.width <= ax + 0.5;
        // A line of type takes about three quarters of its size from base line to capitals.
        const above = Math.abs(ay - by) >= 0.7 * Math.min(a.height, b.height);
        expect(apart || above, `${a.str} and ${b.str}`).toBe(true);
      }
  };

  const arc = templateOf('units: in\nedge: [{ start: [0, 0] }, { arc: { to: [1, 0], rise: 1/8 } }]', 'arc');
  const many = made(
    'layout: { strip: { length: 90, width: 3 } }\nswag: { repeats: 40, gap: 0, setting: crown-on-centre }\n',
    arc,
  );

  it.each(['letter', 'a4'] as const)(
    'holds every word of 40 repeats inside the margins of %s',
    async (paper) => {
      const { bytes, pages } = await pdfOf(many, paper);
      expect((await PDFDocument.load(bytes)).getPageCount()).toBe(pages);
      expect(pages).toBeLessThanOrEqual(3);
      const found = await textsOf(bytes);
      const margin = 36 - 0.5;
      for (const { width, height, items } of found)
        for (const t of items) {
          const [, , , , x, y] = t.transform as number[];
          expect(x, t.str).toBeGreaterThanOrEqual(margin);
          expect(x! + t.width, t.str).toBeLessThanOrEqual(width - margin);
          expect(y, t.str).toBeGreaterThanOrEqual(margin);
          expect(y, t.str).toBeLessThanOrEqual(height - margin);
        }
      const strings = new Set(found.flatMap((p) => p.items.map((t) => t.str)));
      const table = many.card.sections.find((s) => s.id === 'marks')!.blocks.find((b) => b.kind === 'table');
      if (table?.kind !== 'table') throw new Error('no table');
      expect(table.rows.length).toBe(40);
      for (const cell of table.rows.flat()) expect(strings, cell).toContain(cell);
    },
  );

  it.each(['raffle-border', 'medallion-frame', 'wreath-frame'])(
    'puts the sample %s on two pages, fills and all',
    async (sample) => {
      const reading = readPlan(await readFile(`samples/${sample}.yaml`, 'utf8'), `${sample}.yaml`);
      if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
      const [{ plan }] = reading.parts;
      const best = search(plan, plan.templates.map(profile)).results[0]!;
      const design = designOf(best.field, best.fit);
      const card = cardOf(design, plan, ON_PAPER);
      for (const paper of ['letter', 'a4'] as const)
        expect((await pdfOf({ plan, design, card }, paper)).pages, paper).toBe(2);
    },
  );

  it('breaks no measure over two lines', async () => {
    let measures = 0;
    // Every count has other figures, and so other lines.
    for (const count of [5, 6, 7, 8, 9, 10, 11, 12]) {
      const wreath = made(
        `layout: { frame: { count: ${count}, around: 9, clearance: 1/2 } }\n`,
        profile('finial'),
      );
      const lines = (await textsOf((await pdfOf(wreath, 'letter')).bytes)).flatMap((p) => p.items);
      for (const [i, { str }] of lines.entries()) {
        const next = lines[i + 1]?.str ?? '';
        if (str.split(' ').length < 5) continue;
        if (/\d [\d/]* ?in\b/.test(str)) measures++;
        if (/\d$/.test(str)) expect(next, `${str} / ${next}`).not.toMatch(/^(\d+\/\d+|in\b)/);
      }
    }
    expect(measures).toBeGreaterThan(50);
  });

  it.each([
    ['strip: { length: 40, width: 7, margin: 1/4 }', ['start line', 'seam', 'heel']],
    [
      'border: { width: 9, inner: 30, margin: 1/2, from: outer, corners: turn }',
      ['outer seam', 'mitre', 'tape’s 0'],
    ],
    ['border: { width: 6, inner: 32, margin: 1/2, corners: meet }', ['inner seam', 'start line', 'heel']],
    ['frame: { block: 14, clearance: 1/2, within: 24 }', ['edge of the block', 'heel']],
    ['frame: { count: 8, around: 9, clearance: 1/2, within: 18 }', ['motif', 'heel'], 'from: heel'],
    ['frame: { count: 8, around: 14, clearance: 1/2, within: 30, from: outer }', ['motif', 'crown end']],
  ])('names marks, lines and places in the figures: %s', async (layout, names, swag = '') => {
    const card = made(`layout: { ${layout} }\nswag: { ${swag} }\n`, profile('finial'));
    const [page] = await textsOf((await pdfOf(card, 'letter')).bytes);
    const { items } = page!;
    // The figures stand between the summary and the first heading.
    const first = items.findIndex((t) => t.str === 'Set the template');
    const found = items.slice(0, first).map((t) => t.str);
    for (const name of ['start mark', 'stop mark', 'centre line', ...names]) expect(found).toContain(name);
    expectApart(items.slice(0, first));
  });

  it('sets the figures of the marks in 12 points at least, and no text lies on another', async () => {
    const border = made(
      'layout: { border: { width: 6, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2 } }\n',
      profile('finial'),
    );
    const found = await textsOf((await pdfOf(border, 'letter')).bytes);
    expect(found.length).toBe(2);
    const marks = new Set(
      border.card.sections
        .find((s) => s.id === 'marks')!
        .blocks.flatMap((b) => (b.kind === 'table' ? b.rows.flat() : [])),
    );
    const figures = found[1]!.items.filter((t) => marks.has(t.str) && /\d \d/.test(t.str));
    expect(figures.length).toBeGreaterThan(30);
    for (const t of figures) expect(t.height).toBeGreaterThanOrEqual(12);
    for (const { items } of found) expectApart(items);
  });
});
