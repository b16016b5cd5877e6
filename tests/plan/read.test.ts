import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { describeProblem } from '../../src/document/index.ts';
import { type Plan, type PlanReading, planJsonSchema, readPlan } from '../../src/plan/index.ts';
import { templateJsonSchema } from '../../src/template/index.ts';
import { RAFFLE } from './sample.ts';

const good = (text: string, fileName = 'plans/raffle.yaml'): Extract<PlanReading, { ok: true }> => {
  const reading = readPlan(text, fileName);
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading;
};
const plan = (text: string): Plan => good(text).parts[0].plan;

const SHORT = 'template: baluster\nlayout: { strip: { length: 60, width: 6 } }\n';
const withSwag = (swag: string): Plan['swag'] => plan(`${SHORT}swag: { ${swag} }\n`).swag;
const withLayout = (layout: string): Plan['layout'] => plan(`template: baluster\nlayout: ${layout}\n`).layout;

describe('readPlan', () => {
  test('reads every key, lengths in mm', () => {
    expect(plan(`${RAFFLE}colours: { fabric: 1B2A49, thread: '#f3e9d2' }\n`)).toEqual({
      title: 'Guild raffle quilt, outer border',
      units: 'in',
      paper: 'letter',
      foot: { clearance: 6.35 },
      templates: ['baluster'],
      layout: {
        kind: 'border',
        width: 152.4,
        // 60 1/8, 72, 60 and 72 1/4 in, times 25.4.
        inner: { top: 1527.175, right: 1828.8, bottom: 1524, left: 1835.15 },
        margin: { inner: 12.7, outer: 12.7 },
        from: 'inner',
        corners: 'turn',
        round: 'quilt',
        measured: 'inner',
      },
      swag: {
        templates: ['baluster'],
        from: { kind: 'section', number: 1 },
        to: { kind: 'crown' },
        setting: 'crown-on-centre',
        side: 'inside',
        direction: 'heel-first',
        repeats: undefined,
        gap: 0,
      },
      rows: [],
      channels: { outward: [6.35], inward: [6.35, 3.175], points: 'round' },
      fills: {
        swag: { kind: 'feather' },
        background: { kind: 'stipple' },
        corner: undefined,
        channels: [{ kind: 'pearls' }],
      },
      stitch: { length: 2.54 },
      marks: { style: { unit: 'in', denominator: 16 } },
      colours: { fabric: '#1b2a49', thread: '#f3e9d2' },
      doubts: [],
    });
  });

  test('fills in all but template and layout, and leaves the choices open', () => {
    expect(plan(SHORT)).toEqual({
      title: 'raffle',
      units: 'in',
      paper: 'letter',
      foot: { clearance: 6.35 },
      templates: ['baluster'],
      layout: { kind: 'strip', length: 1524, width: 152.4, margin: { inner: 0, outer: 0 }, ends: 0 },
      swag: {
        templates: ['baluster'],
        from: undefined,
        to: undefined,
        setting: undefined,
        side: undefined,
        direction: undefined,
        repeats: undefined,
        gap: undefined,
      },
      rows: [],
      channels: { outward: [], inward: [], points: 'round' },
      fills: { swag: undefined, background: undefined, corner: undefined, channels: [] },
      stitch: { length: 2.54 },
      marks: { style: { unit: 'in', denominator: 16 } },
      colours: {},
      doubts: [],
    });
  });

  test('auto is the same as leaving a choice out, but for the gap', () => {
    const open = withSwag('from: auto, to: auto, setting: auto, side: auto, direction: auto, repeats: auto');
    expect(open).toEqual(plan(SHORT).swag);
    expect(withSwag('gap: auto').gap).toBe('auto');
  });

  test('the same plan as JSON', () => {
    const json = {
      template: ['a', './b.yaml'],
      layout: { strip: { length: '60 in', width: 6 } },
      $schema: 'x',
    };
    expect(plan(JSON.stringify(json)).templates).toEqual(['a', './b.yaml']);
  });

  test('a limit that is said to leave just enough room round a block is taken', () => {
    const frame = (within: string) =>
      readPlan(
        `template: a\nlayout: { frame: { block: 14, clearance: 1/2, within: ${within} } }\n`,
        'f.yaml',
      );
    const tight = frame('15');
    expect(tight.ok ? '' : tight.problems[0]?.expected).toBe('at least 15 1/2 in');
    expect(frame('15 1/2').ok).toBe(true);
  });

  test('a stitch is as long as its words say, in inches and in millimetres', () => {
    expect(plan(SHORT).stitch.length).toBe(2.54);
    // 2.5 mm is what metric machines are set to. Common practice, no source.
    const metric = `${SHORT}units: mm\n`.replace('60,', '600,').replace('6 }', '60 }');
    expect(plan(metric).stitch.length).toBe(2.5);
  });

  test('bare numbers are in the units of the file, wherever in it they are named', () => {
    expect(plan(`${SHORT}units: cm\n`).layout).toMatchObject({ length: 600, width: 60 });
    expect(
      plan('template: a\nlayout: { strip: { length: 1500, width: 6 in } }\nunits: mm').layout,
    ).toMatchObject({
      length: 1500,
      width: 152.4,
    });
    expect(plan(`${SHORT}units: mm\n`.replace('60,', '600,').replace('6 }', '60 }')).foot.clearance).toBe(
      6.35,
    );
  });

  test('knows where keys stand', () => {
    const { placeAt } = good(RAFFLE).parts[0];
    expect(placeAt(['template'])).toEqual({ file: 'plans/raffle.yaml', line: 5, column: 11 });
    expect(placeAt(['layout', 'border', 'inner', 'right'])).toMatchObject({ line: 9, column: 34 });
    expect(placeAt(['fills', 'corner'])).toMatchObject({ line: 22, column: 1 });
  });
});

test.each(['007', '1.10', '0x10', '5e3'])('a title of digits is printed as it is written: %s', (title) => {
  expect(plan(`title: ${title}\n${SHORT}`).title).toBe(title);
  expect(plan(SHORT.replace('baluster', title)).templates).toEqual([title]);
});

describe('layouts', () => {
  test('margins: one for both seams, or each its own', () => {
    const margin = (m: string) => withLayout(`{ strip: { length: 60, width: 6, margin: ${m} } }`);
    expect(margin('1/2')).toMatchObject({ margin: { inner: 12.7, outer: 12.7 } });
    expect(margin('{ inner: 1/2, outer: 1/4 }')).toMatchObject({ margin: { inner: 12.7, outer: 6.35 } });
    expect(margin('{ outer: 1/4 }')).toMatchObject({ margin: { inner: 0, outer: 6.35 } });
  });

  test('a square quilt needs one length, and corners may be left open', () => {
    const inner = 1524;
    expect(withLayout('{ border: { width: 6, inner: 60 } }')).toEqual({
      kind: 'border',
      width: 152.4,
      inner: { top: inner, right: inner, bottom: inner, left: inner },
      margin: { inner: 0, outer: 0 },
      from: 'inner',
      corners: undefined,
      round: 'quilt',
      measured: 'inner',
    });
    expect(withLayout('{ border: { width: 6, inner: 60, corners: auto } }')).toMatchObject({
      corners: undefined,
    });
    expect(withLayout('{ border: { width: 6, inner: 60, corners: meet, from: outer } }')).toMatchObject({
      corners: 'meet',
      from: 'outer',
    });
  });

  test('frames', () => {
    expect(withLayout('{ frame: { count: 8, around: 9 in, clearance: 1/2 in, within: 16 in } }')).toEqual({
      kind: 'frame',
      count: 8,
      around: 228.6,
      clearance: 12.7,
      within: 406.4,
      from: 'inner',
    });
    expect(withLayout('{ frame: { count: auto, around: 9 } }')).toEqual({
      kind: 'frame',
      count: undefined,
      around: 228.6,
      clearance: 0,
      within: undefined,
      from: 'inner',
    });
    expect(withLayout('{ frame: { around: 9, from: outer } }')).toMatchObject({ from: 'outer' });
  });

  test('a frame round a block is a border round it', () => {
    // Whole inches: 20 − 12 leaves 4 in on either side of the block's width, and as much on its height.
    const expected = {
      kind: 'border',
      width: 101.6,
      inner: { top: 304.8, right: 228.6, bottom: 304.8, left: 228.6 },
      margin: { inner: 12.7, outer: 0 },
      from: 'inner',
      corners: undefined,
      round: 'block',
      measured: 'inner',
    };
    const block = 'block: { width: 12, height: 9 }, clearance: 1/2, within: 20';
    expect(withLayout(`{ frame: { ${block} } }`)).toEqual(expected);
    expect(withLayout(`{ frame: { ${block}, count: auto, corners: meet, from: outer } }`)).toEqual({
      ...expected,
      from: 'outer',
      corners: 'meet',
    });
    expect(withLayout('{ frame: { block: 12, within: 20 } }')).toMatchObject({
      inner: { top: 304.8, right: 304.8, bottom: 304.8, left: 304.8 },
    });
  });
});

describe('choices', () => {
  test.each([
    ['from: 2', { from: { kind: 'section', number: 2 } }],
    ['from: shoulder', { from: { kind: 'named', name: 'shoulder' } }],
    ['from: heel', { from: { kind: 'heel' } }],
    ['to: crown', { to: { kind: 'crown' } }],
    ['to: 3', { to: { kind: 'section', number: 3 } }],
    ['setting: alignment-line', { setting: 'alignment-line' }],
    ['setting: flat-on-guide', { setting: 'flat-on-guide' }],
    ['side: outside', { side: 'outside' }],
    ['direction: crown-first', { direction: 'crown-first' }],
    ['repeats: 8', { repeats: [8] }],
    ['repeats: [8]', { repeats: [8] }],
    ['gap: 1/2', { gap: 12.7 }],
    ['gap: 5 mm', { gap: 5 }],
  ])('%s', (text, expected) => {
    expect(withSwag(text)).toMatchObject(expected);
  });

  test('repeats for four sides run clockwise from the top, as a list or by name', () => {
    const border = 'template: a\nlayout: { border: { width: 6, inner: 60 } }\n';
    expect(plan(`${border}swag: { repeats: [8, 9, 8, 9] }`).swag.repeats).toEqual([8, 9, 8, 9]);
    expect(plan(`${border}swag: { repeats: { left: 4, bottom: 3, right: 2, top: 1 } }`).swag.repeats).toEqual(
      [1, 2, 3, 4],
    );
  });

  test('fills with settings, single entries without brackets', () => {
    const text = `${SHORT}channels: { outward: 1/4 }\nfills: { swag: { kind: stipple, spacing: 1/4, seed: 3 }, corner: { kind: crosshatch, angle: 45 }, channels: pearls }`;
    expect(plan(text)).toMatchObject({
      channels: { outward: [6.35] },
      fills: {
        swag: { kind: 'stipple', spacing: 6.35, seed: 3 },
        corner: { kind: 'crosshatch', angle: Math.PI / 4 },
        channels: [{ kind: 'pearls' }],
      },
    });
  });

  test.each([
    ['in', '1/16', { unit: 'in', denominator: 16 }],
    ['in', '1/32 in', { unit: 'in', denominator: 32 }],
    ['in', '0.5 mm', { unit: 'mm', step: 0.5 }],
    ['mm', '1', { unit: 'mm', step: 1 }],
    ['cm', '0.1', { unit: 'cm', step: 1 }],
    ['mm', '1/8 in', { unit: 'in', denominator: 8 }],
  ])('marks in a file in %s rounded to %s', (units, round, style) => {
    const sizes = { in: [60, 6], cm: [150, 15], mm: [1500, 150] }[units as Plan['units']];
    const text = `units: ${units}\ntemplate: a\nlayout: { strip: { length: ${sizes[0]}, width: ${sizes[1]} } }\nmarks: { round: ${round} }`;
    expect(plan(text).marks.style).toEqual(style);
  });

  test('a title stays one line, whatever is written in it', () => {
    expect(plan(`${SHORT}title: "a\\u0000b\\nc"`).title).toBe('a b c');
    expect(plan(`${SHORT}title: 2026`).title).toBe('2026');
  });

  test('paper by name, in capitals or not', () => {
    expect(['A4', 'a4', 'Letter', 'letter-a4'].map((p) => plan(`${SHORT}paper: ${p}`).paper)).toEqual([
      'a4',
      'a4',
      'letter',
      'letter-a4',
    ]);
  });

  // Common practice, no source.
  test('paper that is not named is that of most printers where the figures are read', () => {
    const measured = SHORT.replace('60', '60 in').replace('6 }', '6 in }');
    const paper = (more: string) => plan(measured + more).paper;
    expect(['in', 'cm', 'mm'].map((units) => paper(`units: ${units}\n`))).toEqual(['letter', 'a4', 'a4']);
    expect(paper('')).toBe('letter');
    expect(paper('units: cm\npaper: letter\n')).toBe('letter');
  });
});

/** Read back as a program that knows only JSON Schema would. */
describe('JSON Schemas', () => {
  const planCheck = z.fromJSONSchema(planJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);
  const templateCheck = z.fromJSONSchema(templateJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);

  const layout = { strip: { length: '60 1/8', width: 6 } };
  test.each([
    [{ template: 'a', layout }, true],
    [
      { template: ['a', 'b'], layout, units: 'cm', swag: { from: 1, gap: 'auto', repeats: [8, 9, 8, 9] } },
      true,
    ],
    [{ template: 'a', layout, fills: { swag: { kind: 'stipple', spacing: '1/4', seed: 3 } } }, true],
    [{ layout }, false],
    [{ template: 'a' }, false],
    [{ template: 'a', layout, unit: 'cm' }, false],
    [{ template: 'a', layout, units: 'feet' }, false],
    [{ template: 'a', layout: { strip: { length: 60 } } }, false],
    [{ template: 'a', layout: { strip: { length: [60], width: 6 } } }, false],
    [{ template: 'a', layout, swag: { setting: 'by-eye' } }, false],
  ])('a plan %j fits: %s', (value, fits) => {
    expect(planCheck.safeParse(value).success).toBe(fits);
  });

  const edge = [{ start: [0, 0] }, { line: { to: ['5 1/2', '1/8'] } }];
  test.each([
    [{ edge }, true],
    [
      {
        edge: { svg: 'M 0 0 L 9 0', unit: 'mm' },
        alignment: [{ name: 'A', at: '1/4' }],
        channelLines: ['1/8'],
      },
      true,
    ],
    [{ title: 'x' }, false],
    [{ edge: [{ start: [0, 0] }] }, false],
    [{ edge: [{ start: [0, 0] }, { lien: { to: [1, 1] } }] }, false],
    [{ edge, crownEnd: 'round' }, false],
  ])('a template %j fits: %s', (value, fits) => {
    expect(templateCheck.safeParse(value).success).toBe(fits);
  });

  test('they are plain JSON, and explain what is not plain', () => {
    const text = JSON.stringify([planJsonSchema(), templateJsonSchema()]);
    expect(text).toContain('"$schema":"http://json-schema.org/draft-07/schema#"');
    for (const words of ['positive towards the foot', 'From seam to seam', 'The seam the swags leave from'])
      expect(text).toContain(words);
  });
});
