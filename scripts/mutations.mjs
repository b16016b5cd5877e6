/**
 * Each important check, seen to fail: one thing in the source is made wrong at a time, in a copy, and the tests
 * named beside it must fail. `node scripts/mutations.mjs` does all; `node scripts/mutations.mjs cross sheet` those
 * whose names hold one of the words. Ends with 1 where a mutation lives, or where a test fails without any.
 *
 * Those marked as needing tools run tests/tools, which need Debian's qpdf and poppler-utils.
 */

import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** What is made wrong, where, and the test that must see it. `from` stands once in the file. */
const MUTATIONS = [
  {
    name: 'clearance off by 0.01 mm, closed outlines',
    file: 'src/geometry/rolling-foot.ts',
    from: 'freeLoops(walk, obstacle, clearance, NO_CAPS,',
    to: 'freeLoops(walk, obstacle, clearance + 0.01, NO_CAPS,',
    test: 'tests/geometry/closed-forms.test.ts',
  },
  {
    name: 'clearance off by 0.01 mm, open edges',
    file: 'src/geometry/rolling-foot.ts',
    from: 'freeLoops(walk, obstacle, clearance, caps,',
    to: 'freeLoops(walk, obstacle, clearance + 0.01, caps,',
    test: 'tests/geometry/closed-forms.test.ts',
  },
  {
    name: 'curves followed ten times as loosely',
    file: 'src/geometry/biarc.ts',
    from: 'CURVE_TOLERANCE = 0.002',
    to: 'CURVE_TOLERANCE = 0.02',
    test: 'tests/geometry/closed-forms.test.ts',
  },
  {
    name: 'an inch of 25.4000508 mm',
    file: 'src/length/read.ts',
    from: 'MM_PER_INCH = 25.4;',
    to: 'MM_PER_INCH = 25.4000508;',
    test: 'tests/reference/paper-and-units.test.ts',
  },
  {
    name: 'a tie between two steps rounded down',
    file: 'src/length/print.ts',
    from: 'Math.floor(steps + 0.5 + TIE_NOISE)',
    to: 'Math.floor(steps + 0.5 - TIE_NOISE)',
    test: 'tests/length/print.test.ts',
  },
  {
    name: 'fractions not fully reduced',
    file: 'src/length/print.ts',
    from: 'while (top > 0 && top % 2 === 0)',
    to: 'while (top > 0 && top % 4 === 0)',
    test: 'tests/length/print.test.ts',
  },
  {
    name: 'A4 a millimetre short',
    file: 'src/pagination/papers.ts',
    from: 'width: A4_WIDTH, height: 297,',
    to: 'width: A4_WIDTH, height: 296,',
    test: 'tests/reference/paper-and-units.test.ts',
  },
  {
    name: 'margins that printers do not reach',
    file: 'src/pagination/papers.ts',
    from: 'LEAST_MARGIN = MM_PER_INCH / 4',
    to: 'LEAST_MARGIN = MM_PER_INCH / 5',
    test: 'tests/reference/paper-and-units.test.ts',
  },
  {
    name: 'scale off by 0.1 %, both axes',
    file: 'src/output/pdf/numbers.ts',
    from: 'POINTS_PER_MM = 72 / MM_PER_INCH',
    to: 'POINTS_PER_MM = 72.072 / MM_PER_INCH',
    test: 'tests/reference/paper-and-units.test.ts',
  },
  {
    name: 'scale off by 0.1 %, across only, inside the page',
    file: 'src/output/pdf/page-content.ts',
    from: '* correction.x) * POINTS_PER_MM',
    to: '* correction.x * 1.001) * POINTS_PER_MM',
    test: 'tests/output/pdf/scale.test.ts',
  },
  {
    name: 'a printer’s error doubled instead of undone',
    file: 'src/pagination/lay-out.ts',
    from: 'factors: { x: 1 / measured.x, y: 1 / measured.y }',
    to: 'factors: { x: measured.x, y: measured.y }',
    test: 'tests/pagination/lay-out.test.ts',
  },
  {
    name: 'viewers may scale the page',
    file: 'src/output/pdf/document.ts',
    from: 'setPrintScaling(PrintScaling.None)',
    to: 'setPrintScaling(PrintScaling.AppDefault)',
    test: 'tests/output/pdf/sheets.test.ts',
  },
  {
    name: 'a cross planned 0.1 mm off',
    file: 'src/pagination/edges.ts',
    from: 'paper: put(drawing) })',
    to: 'paper: { ...put(drawing), x: put(drawing).x + 0.1 } })',
    test: 'tests/pagination/lay-out.test.ts',
  },
  {
    name: 'a cross drawn 0.1 mm off',
    file: 'src/output/pdf/furniture.ts',
    from: 'content.form(furniture.cross, cross.paper)',
    to: 'content.form(furniture.cross, { x: cross.paper.x + 0.1, y: cross.paper.y })',
    test: 'tests/output/pdf/sheets.test.ts',
  },
  {
    name: 'the cut 0.5 mm from the crosses',
    file: 'src/pagination/edges.ts',
    from: 'stripAt(live, side, overlap / 2)',
    to: 'stripAt(live, side, overlap / 2 + 0.5)',
    test: 'tests/pagination/lay-out.test.ts',
  },
  {
    name: 'a sheet dropped',
    file: 'src/output/pdf/sheets.ts',
    from: 'for (const sheet of plan.sheets) drawSheet',
    to: 'for (const sheet of plan.sheets.slice(1)) drawSheet',
    test: 'tests/output/pdf/sheets.test.ts',
  },
  {
    name: 'lines left off a sheet that they touch',
    file: 'src/output/pdf/sheets.ts',
    from: 'itemTouches(item, sheet.window)',
    to: 'itemTouches(item, { ...sheet.window, maxX: sheet.window.maxX - 20 })',
    test: 'tests/output/pdf/sheets.test.ts',
  },
  {
    name: 'marks rounded twice: a rounded share, repeated',
    file: 'src/swag/marking.ts',
    from: 'const share = 2 * pose.halfSpan + gap;',
    to: 'const share = roundLength(2 * pose.halfSpan + gap, style);',
    test: 'tests/swag/marking.test.ts',
  },
  {
    name: 'a swag 0.001 mm too deep',
    file: 'src/swag/pose.ts',
    from: 'Math.sqrt((shape.chord - halfSpan) * (shape.chord + halfSpan))',
    to: '0.001 + Math.sqrt((shape.chord - halfSpan) * (shape.chord + halfSpan))',
    test: 'tests/swag/handbook-arc.test.ts',
  },
  {
    name: 'corner swags on the wrong side of the corner',
    file: 'src/swag/corner.ts',
    from: "(field.from === 'inner' ? -1 : 1)",
    to: "(field.from === 'inner' ? 1 : -1)",
    test: 'tests/swag/handbook-arc.test.ts',
  },
  {
    name: 'a mirrored motion turned the wrong way',
    file: 'src/geometry/motion.ts',
    from: '(outer.flip ? -inner.angle : inner.angle)',
    to: 'inner.angle',
    test: 'tests/geometry/motion.test.ts',
  },
  {
    name: 'more waste than any source gives',
    file: 'src/swag/thread.ts',
    from: 'WASTAGE = 0.15',
    to: 'WASTAGE = 0.2',
    test: 'tests/reference/thread.test.ts',
  },
  {
    name: 'thickness counted once',
    file: 'src/swag/thread.ts',
    from: '2 + (2 * thickness) / stitch',
    to: '2 + thickness / stitch',
    test: 'tests/reference/thread.test.ts',
  },
  {
    name: 'a plume over the edge',
    file: 'src/fill/feather.ts',
    from: 'const EDGE_GAP = 0.3;',
    to: 'const EDGE_GAP = -0.3;',
    test: 'tests/fill/fills.test.ts',
    only: 'feather',
  },
  {
    name: 'arcs of more than half a turn in one SVG command',
    file: 'src/output/svg/path-data.ts',
    from: 'const LARGEST_SWEEP = (2 * Math.PI) / 3;',
    to: 'const LARGEST_SWEEP = 2 * Math.PI;',
    test: 'tests/output/svg/path-data.test.ts',
  },
  {
    name: 'tools: a cross drawn 0.1 mm off',
    file: 'src/output/pdf/furniture.ts',
    from: 'content.form(furniture.cross, cross.paper)',
    to: 'content.form(furniture.cross, { x: cross.paper.x + 0.1, y: cross.paper.y })',
    test: 'tests/tools/taped.tools.ts',
    only: 'none is',
  },
  {
    name: 'tools: a picture 0.1 mm off on its sheet',
    file: 'src/output/pdf/sheets.ts',
    from: 'content.placed(sheet.place, () =>',
    to: 'content.placed({ ...sheet.place, x: sheet.place.x + 0.1 }, () =>',
    test: 'tests/tools/taped.tools.ts',
    only: 'none is',
  },
  {
    name: 'tools: scale off by 0.1 %, across only, inside the page',
    file: 'src/output/pdf/page-content.ts',
    from: '* correction.x) * POINTS_PER_MM',
    to: '* correction.x * 1.001) * POINTS_PER_MM',
    test: 'tests/tools/taped.tools.ts',
    only: 'none is',
  },
  {
    name: 'hostile: control characters in the name of a template',
    file: 'src/cli/find-template.ts',
    from: '/\\p{Cc}/u.test(name)',
    to: '/\\p{Co}/u.test(name)',
    test: 'tests/cli/hostile/each-command.test.ts',
  },
  {
    name: 'hostile: a foot of any size',
    file: 'src/cli/clearance.ts',
    from: 'clearance <= most + NOISE',
    to: 'clearance <= most * 1e12',
    test: 'tests/cli/hostile/each-command.test.ts',
  },
  {
    name: 'hostile: fills of any number of lines',
    file: 'src/drawing/draw-plan.ts',
    from: 'if (count <= MOST_FILL_LINES)',
    to: 'if (count <= 100 * MOST_FILL_LINES)',
    test: 'tests/cli/hostile/bounds.test.ts',
    only: 'crosshatched',
  },
  {
    name: 'hostile: a half-written file that an interrupt leaves',
    file: 'src/cli/node-io.ts',
    from: 'unlinkSync(path);',
    to: 'void path;',
    test: 'tests/cli/hostile/disk.test.ts',
    only: 'in the middle of the write',
  },
];

const words = process.argv.slice(2);
const wanted = MUTATIONS.filter(
  ({ name }) => words.length === 0 || words.some((word) => name.includes(word)),
);

const copy = mkdtempSync(join(tmpdir(), 'swagwright-mutations-'));
const COPIED = [
  'src',
  'tests',
  'profiles',
  'samples',
  'package.json',
  'tsconfig.json',
  'tsconfig.build.json',
];
const CONFIGS = ['vitest.config.ts', 'vitest.tools.config.ts'];

/** Which tests failed: nothing where the tests did not run at all, which proves nothing. */
const failuresOf = ({ test, only }) => {
  const report = join(copy, 'report.json');
  rmSync(report, { force: true });
  const config = test.endsWith('.tools.ts') ? 'vitest.tools.config.ts' : 'vitest.config.ts';
  const args = ['run', '--config', config, '--reporter=json', `--outputFile=${report}`, test];
  if (only) args.push('-t', only);
  spawnSync(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), ...args], { cwd: copy });
  if (!existsSync(report)) return undefined;
  const told = JSON.parse(readFileSync(report, 'utf8'));
  const ran = told.testResults.flatMap((file) => file.assertionResults);
  const failed = ran.filter((one) => one.status === 'failed');
  if (!ran.some((one) => one.status === 'passed' || one.status === 'failed')) return undefined;
  return failed.map((one) => one.fullName);
};

const row = (...cells) => console.log(`| ${cells.join(' | ')} |`);
let bad = 0;
try {
  for (const name of [...COPIED, ...CONFIGS]) cpSync(join(root, name), join(copy, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

  const sound = new Map();
  row('made wrong', 'caught by', 'tests that fail', 'the first');
  row('---', '---', '---', '---');
  for (const mutation of wanted) {
    const { name, file, from, to, test, only } = mutation;
    const path = join(copy, file);
    const source = readFileSync(path, 'utf8');
    if (source.split(from).length !== 2) {
      row(name, test, 'the place is not in the source once', file);
      bad++;
      continue;
    }
    const key = `${test} ${only ?? ''}`;
    if (!sound.has(key)) sound.set(key, failuresOf(mutation));
    const before = sound.get(key);
    if (before === undefined || before.length > 0) {
      row(name, test, 'fails without the mutation', before?.[0] ?? 'did not run');
      bad++;
      continue;
    }
    writeFileSync(path, source.replace(from, to));
    const failed = failuresOf(mutation);
    writeFileSync(path, source);
    if (failed === undefined || failed.length === 0) bad++;
    row(name, test, failed === undefined ? 'did not run' : failed.length || 'LIVES', failed?.[0] ?? '');
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
console.log(`${wanted.length - bad} of ${wanted.length} caught`);
process.exit(bad === 0 ? 0 : 1);
