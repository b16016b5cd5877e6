/** What README and the help say of keys, names and usual values is what the source has: they are written by hand. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LAYERS } from '../../src/drawing/index.ts';
import { FILLS } from '../../src/fill/index.ts';
import { exactLength } from '../../src/length/index.ts';
import { TRIAL_REGIONS } from '../../src/output/audition/index.ts';
import { PAPER_IDS, type Plan, planJsonSchema, readPlan } from '../../src/plan/index.ts';
import { emptyFolder, run } from '../cli/run.ts';

const README = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');

/** The rows of “What a plan may say”: the key, what it takes, and what is taken when it is left out. */
const rows = README.slice(README.indexOf('## What a plan may say'))
  .split('\n\n')[1]!
  .split('\n')
  .slice(2)
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .map(([, key = '', takes = '', usual = '']) => ({ key, takes, usual }));

const rowOf = (key: string) => rows.find((row) => words(row.key).includes(key))!;

/** The words that stand in code. */
const words = (text: string): readonly string[] =>
  [...text.matchAll(/`([^`]+)`/g)].flatMap(([, code]) => code!.match(/[A-Za-z0-9-]+/g) ?? []);

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly anyOf?: readonly Schema[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema;
  readonly enum?: readonly string[];
}

/** All keys and all words that a schema allows, however deep. */
const namesIn = (schema: Schema): readonly string[] => [
  ...Object.entries(schema.properties ?? {}).flatMap(([key, inner]) => [key, ...namesIn(inner)]),
  ...(schema.anyOf ?? []).flatMap(namesIn),
  ...(schema.items ? namesIn(schema.items) : []),
  ...(schema.enum ?? []),
];

/** A plan with one design, and one with parts. */
const [one, several] = (planJsonSchema() as { readonly anyOf: readonly [Schema, Schema] }).anyOf;
const alone = one.properties ?? {};
const { parts } = several.properties ?? {};
/** What a part holds as one design does has a row of its own. */
const ofPart = Object.entries(parts?.additionalProperties?.properties ?? {}).filter(([key]) => !alone[key]);
/** And what a row's swag may say as a plan's may. */
const { rows: ofRows, swag: ofAll } = alone;
const { swag: inRow, ...ofRow } = ofRows?.items?.properties ?? {};
const ofSwag = Object.entries(inRow?.properties ?? {}).filter(([key]) => !ofAll?.properties?.[key]);
const properties: Readonly<Record<string, Schema>> = {
  ...alone,
  rows: { properties: { ...ofRow, swag: { properties: Object.fromEntries(ofSwag) } } },
  parts: { properties: Object.fromEntries(ofPart) },
};

const planOf = (text: string): Plan => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts[0].plan;
};
const STRIP = 'template: a\nlayout: { strip: { length: 1500 mm, width: 150 mm } }\n';
const [inInches, inCm] = [planOf(STRIP), planOf(`${STRIP}units: cm\n`)];

describe('the table of a plan’s keys', () => {
  const { $schema: _, layout, ...others } = properties;
  const keys = { ...layout!.properties, ...others };

  test('it has a row for every key, and no other', () => {
    const named = rows.flatMap((row) => words(row.key)).filter((key) => key !== 'layout');
    expect(named.sort()).toEqual(Object.keys(keys).sort());
    expect(named.length).toBeGreaterThan(10);
  });

  test.each(Object.entries(keys))('%s: all that it may hold is named', (key, schema) => {
    const { takes } = rowOf(key);
    // `auto` is leaving a key out, and a paper's name may have a capital.
    const named = new Set([...words(takes), 'auto', ...PAPER_IDS.map((id) => id.toUpperCase())]);
    const missing = namesIn(schema).filter((name) => !named.has(name) && !named.has(name.toLowerCase()));
    expect(missing).toEqual([]);
  });

  test('what is taken when a key is left out', () => {
    const { foot, stitch, marks, units, paper, layout: strip } = inInches;
    const perInch = 25.4 / stitch.length;
    const metric = exactLength(inCm.stitch.length, { unit: 'mm', step: 0.1 });
    expect(rowOf('foot').usual).toBe(
      `${exactLength(foot.clearance, marks.style)}, ${perInch} to the inch (metric: ${metric}), 1/16 in or 0.5 mm`,
    );
    expect(marks.style).toEqual({ unit: 'in', denominator: 16 });
    expect(inCm.marks.style).toMatchObject({ step: 0.5 });
    expect(words(rowOf('title').usual)).toEqual([units, paper]);
    expect(strip).toMatchObject({ margin: { inner: 0, outer: 0 } });
    const border = planOf('template: a\nlayout: { border: { width: 6, inner: 60 } }\n').layout;
    expect(border).toMatchObject({ from: 'inner', margin: { inner: 0, outer: 0 }, corners: undefined });
    expect(rowOf('border').usual).toBe('margin 0, from the inner seam, corners chosen');
  });

  test('the first plan names the papers', () => {
    const line = README.split('\n').find((l) => l.startsWith('paper: '))!;
    expect(line).toMatch(new RegExp(`^paper: letter +# or ${PAPER_IDS.slice(1).join(', ')}$`));
  });
});

describe('the help', () => {
  const help = async (command: string): Promise<string> =>
    (await run(emptyFolder(), [command, '--help'])).out.replace(/\s+/g, ' ');

  test.each(['mockup', 'card', 'audition'])('%s names every paper', async (command) => {
    expect(await help(command)).toContain(
      `--paper <name> ${PAPER_IDS.slice(0, -1).join(', ')}, or ${PAPER_IDS.at(-1)}`,
    );
  });

  test.each(['mockup', 'draw'])('%s names every layer that may be left out', async (command) => {
    const said = /--without <layers> leave out ([\w, ]+?);/.exec(await help(command))?.[1];
    expect(
      said
        ?.match(/\w+/g)
        ?.filter((word) => word !== 'or')
        .sort(),
    ).toEqual([...LAYERS].sort());
  });

  test('audition names every region', async () => {
    const said = /--region <region> ([\w, ]+?) \(/.exec(await help('audition'))?.[1];
    expect(said?.match(/\w+/g)?.filter((word) => word !== 'or')).toEqual([...TRIAL_REGIONS]);
  });
});

test('the README names every fill, and no other', () => {
  const [, listed = ''] = /the names are ([^|]+?) \|/.exec(README) ?? [];
  expect(listed.split(/, | and /)).toEqual(FILLS.map((f) => f.name));
});
