/**
 * `template import` beside a browser: what it takes from a drawing is what Debian's Chromium paints, or it is refused.
 * Chromium's own measures are used: getPointAtLength, getScreenCTM, getBBox (SVG 2, 4.6 and 10.4), and what is hit at
 * a point (CSSOM View).
 */

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeProblem, type Problem } from '../../../src/document/index.ts';
import {
  distance,
  distanceToPiece,
  type Path,
  type Point,
  pathBox,
  pathLength,
  pieceAt,
} from '../../../src/geometry/index.ts';
import { svgOutline } from '../../../src/trace/index.ts';
import { runs } from '../../support/runs.ts';
import { launch } from './harness.ts';
import { randomDrawing, slippedDrawing } from './random-drawing.ts';

const PIXEL = 25.4 / 96;
/** mm: what is taken and what is painted. */
const NEAR = 0.01;

interface Seen {
  readonly element: string;
  /** Of a shape: its subpaths in px of the screen. */
  readonly parts: readonly (readonly Pair[])[];
  /** Of a copy: its box in its own units, and from them to px. */
  readonly box: readonly number[] | undefined;
  readonly matrix: readonly number[];
  readonly curved: boolean;
  readonly lined: boolean;
  /** How many of its own points on the sheet hit it. */
  readonly hit: number;
  /** Of the points of what was taken, on the sheet: those that hit it. */
  readonly taken: number;
}
type Pair = readonly [number, number];
interface Looked {
  readonly seen: readonly Seen[];
  /** Points of what was taken that are on the sheet. */
  readonly onSheet: number;
}

/** Runs in the browser. */
const lookAt = async (asked: readonly (readonly [string, readonly Pair[]])[]): Promise<Looked[]> => {
  const frame = document.querySelector('iframe')!;
  const all: Looked[] = [];
  for (const [text, taken] of asked) {
    const url = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
    await new Promise((resolve) => {
      frame.onload = resolve;
      frame.src = url;
    });
    URL.revokeObjectURL(url);
    const drawing = frame.contentDocument!;
    const sheet = drawing.documentElement.getBoundingClientRect();
    const isOn = ([x, y]: Pair): boolean =>
      x > Math.max(0, sheet.left) + 2 &&
      y > Math.max(0, sheet.top) + 2 &&
      x < Math.min(frame.clientWidth, sheet.right) - 2 &&
      y < Math.min(frame.clientHeight, sheet.bottom) - 2;
    const through = (m: DOMMatrix, p: { x: number; y: number }): Pair => [
      m.a * p.x + m.c * p.y + m.e,
      m.b * p.x + m.d * p.y + m.f,
    ];
    const takenOn = taken.filter(isOn);
    // A fill without a line is hit on one side of its border only.
    const around = [
      [0, 0],
      [1.5, 0],
      [-1.5, 0],
      [0, 1.5],
      [0, -1.5],
    ] as const;
    const hitAt = ([x, y]: Pair): Set<Element> =>
      new Set(around.flatMap(([dx, dy]) => drawing.elementsFromPoint(x + dx, y + dy)));
    const takenHits = takenOn.map(hitAt);
    const seen: Seen[] = [];
    for (const element of drawing.querySelectorAll<SVGGraphicsElement>(
      'path,polyline,polygon,line,rect,circle,ellipse,use',
    )) {
      const m = element.getScreenCTM();
      if (!m || !element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      const common = {
        element: element.localName,
        matrix: [m.a, m.b, m.c, m.d, m.e, m.f],
        curved: /a/i.test(element.getAttribute('d') ?? ''),
        lined: frame.contentWindow!.getComputedStyle(element).stroke !== 'none',
        taken: takenHits.filter((hit) => hit.has(element)).length,
      };
      if (element.localName === 'use') {
        const { x, y, width, height } = element.getBBox();
        seen.push({ ...common, parts: [], box: [x, y, x + width, y + height], hit: 0 });
        continue;
      }
      const shape = element as unknown as SVGGeometryElement;
      const length = shape.getTotalLength();
      if (!(length > 0)) continue;
      const looks = 200;
      const step = length / looks;
      const at = (s: number): DOMPoint => shape.getPointAtLength(s);
      const between = (p: DOMPoint, q: DOMPoint): number => Math.hypot(p.x - q.x, p.y - q.y);
      const parts: Pair[][] = [[through(m, at(0))]];
      for (let i = 1; i <= looks; i++) {
        const [before, here] = [at((i - 1) * step), at(i * step)];
        if (between(before, here) > step * 3 + 0.01) {
          // A jump to the next subpath: where it is, to a ten-thousandth of a step.
          let [low, high] = [0, 1];
          for (let k = 0; k < 16; k++) {
            const middle = (low + high) / 2;
            if (between(before, at((i - 1 + middle) * step)) > step * 3 + 0.01) high = middle;
            else low = middle;
          }
          parts.at(-1)!.push(through(m, at((i - 1 + low) * step)));
          parts.push([through(m, at((i - 1 + high) * step))]);
        }
        parts.at(-1)!.push(through(m, here));
      }
      const own = parts
        .flat()
        .filter((_, i) => i % 20 === 0)
        .filter(isOn);
      seen.push({ ...common, parts, box: undefined, hit: own.filter((p) => hitAt(p).has(element)).length });
    }
    all.push({ seen, onSheet: takenOn.length });
  }
  return all;
};

const samplesOf = (path: Path, each: number): Point[] =>
  path.pieces.flatMap((p) => Array.from({ length: each + 1 }, (_, i) => pieceAt(p, i / each)));

const toPixels = ({ x, y }: Point): Pair => [x / PIXEL, -y / PIXEL];
const toMm = ([x, y]: Pair): Point => ({ x: x * PIXEL, y: -y * PIXEL });

const lengthOfPart = (part: readonly Pair[]): number =>
  PIXEL * part.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - part[i]![0], y - part[i]![1]), 0);

/** What is wrong with a subpath as it was taken; undefined where it is the same. */
const differs = (path: Path, part: readonly Pair[], curved: boolean): string | undefined => {
  const theirs = part.map(toMm);
  const box = pathBox(path);
  // Chromium draws arcs as cubics of a quarter turn at most, which miss their circle by 2.73e-4 of its radius, and finds
  // centres in single precision: where the radius just reaches, the root of 1e-7 of the chord.
  const arcs = curved ? 4e-4 * Math.hypot(box.maxX - box.minX, box.maxY - box.minY) : 0;
  // What is metres away has no more digits in it.
  const far = Math.max(...Object.values(box).map(Math.abs));
  const near = NEAR + arcs + 2e-5 * Math.max(0, far - 500);
  const off = Math.max(
    ...theirs.map((p) => Math.min(...path.pieces.map((piece) => distanceToPiece(piece, p)))),
  );
  if (off > near) return `${off.toFixed(3)} mm off`;
  // And nothing of what was taken lies farther from their points than these lie from one another.
  const step = Math.max(...theirs.slice(1).map((p, i) => distance(p, theirs[i]!)));
  const over = Math.max(...samplesOf(path, 3).map((p) => Math.min(...theirs.map((t) => distance(p, t)))));
  if (over > step / 2 + near) return `goes ${over.toFixed(2)} mm beyond`;
  // Between points every corner is cut short.
  const [ours, length] = [pathLength(path), lengthOfPart(part)];
  if (Math.abs(ours - length) > 0.02 * length + step)
    return `${ours.toFixed(2)} mm long, not ${length.toFixed(2)}`;
  if (path.closed) return undefined;
  const ends = [distance(path.pieces[0]!.from, theirs[0]!), distance(path.pieces.at(-1)!.to, theirs.at(-1)!)];
  return Math.max(...ends) > near + 0.02 ? `ends ${ends.map((e) => e.toFixed(3))} mm off` : undefined;
};

/** As far as a copy can be measured: its box in its own units. */
const copyDiffers = (path: Path, { box, matrix }: Seen, curved: number): string | undefined => {
  const [a, b, c, d, e, f] = matrix as [number, number, number, number, number, number];
  const size = a * d - b * c;
  const local = samplesOf(path, 200).map((p) => {
    const [x, y] = toPixels(p);
    return [(d * (x - e) - c * (y - f)) / size, (-b * (x - e) + a * (y - f)) / size] as const;
  });
  const xs = local.map(([x]) => x);
  const ys = local.map(([, y]) => y);
  const ours = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const off =
    Math.max(...ours.map((v, i) => Math.abs(v - box![i]!))) *
    Math.max(Math.hypot(a, b), Math.hypot(c, d)) *
    PIXEL;
  return off > NEAR + curved ? `a copy ${off.toFixed(3)} mm off` : undefined;
};

/** What is wrong with what was taken of a drawing. */
const faultOf = (path: Path, { seen, onSheet }: Looked): string | undefined => {
  const longest = Math.max(0, ...seen.filter((s) => s.hit > 0).flatMap((s) => s.parts.map(lengthOfPart)));
  const faults: string[] = [];
  for (const one of seen) {
    // Only a part of it is painted, or nothing at all.
    // A sharp corner without a line is not hit.
    const isWhole = one.taken >= onSheet * (one.lined ? 1 : 0.6);
    if (one.box) {
      const fault = copyDiffers(path, one, 0.02);
      if (!fault && isWhole) return undefined;
      faults.push(fault ?? `a copy of which ${one.taken} of ${onSheet} are painted`);
    }
    for (const part of one.parts) {
      const fault = differs(path, part, one.curved);
      if (!fault && isWhole && pathLength(path) >= 0.99 * longest) return undefined;
      faults.push(
        fault ??
          `${one.element} of which ${one.taken} of ${onSheet} are painted, longest ${longest.toFixed(1)}`,
      );
    }
  }
  return `${pathLength(path).toFixed(2)} mm taken: ${faults.join('; ') || 'nothing is painted'}`;
};

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launch();
  page = await browser.newPage({ viewport: { width: 1300, height: 1300 } });
  // A place of its own, so that what is in the frame can be asked; nothing is fetched.
  await page.route('**/*', (route) =>
    route.fulfill({
      contentType: 'text/html',
      body: '<body style="margin:0"><iframe width="1200" height="1200" style="border:0">',
    }),
  );
  await page.goto('http://drawings.invalid/');
});
afterAll(async () => {
  await browser?.close();
});

/** Of drawings those that are taken otherwise than they are painted, and how many are taken rightly. */
const compare = async (drawings: readonly string[]): Promise<{ wrong: string[]; same: number }> => {
  const wrong: string[] = [];
  let same = 0;
  for (let i = 0; i < drawings.length; i += AT_ONCE) {
    const read = drawings
      .slice(i, i + AT_ONCE)
      .map((text) => ({ text, made: svgOutline(text, { file: 'd.svg' }) }))
      // What joins ends that nearly meet is said, and is not painted.
      .filter(({ made }) => !(made.ok && made.outline.joined > 0));
    const looked = await page.evaluate(
      lookAt,
      // A line's very ends lie on the border of its ink.
      read.map(
        ({ text, made }) =>
          [text, made.ok ? samplesOf(made.outline.path, 3).slice(1, -1).map(toPixels) : []] as const,
      ),
    );
    for (const [k, { text, made }] of read.entries()) {
      const fault = made.ok ? faultOf(made.outline.path, looked[k]!) : refusalFault(made.problem, looked[k]!);
      if (fault) wrong.push(`${fault}\n${text}`);
      else if (made.ok) same++;
    }
  }
  return { wrong, same };
};

const AT_ONCE = 50;

/** What is refused is told with its place; nothing is said to be unseen that is painted. */
const refusalFault = (problem: Problem, { seen }: Looked): string | undefined => {
  const said = describeProblem(problem);
  if (problem.code === 'svg-no-path') return seen.some((s) => s.hit > 0) ? `${said}: but it is` : undefined;
  return problem.place || UNPLACED.has(problem.code) ? undefined : `${said}: without a place`;
};

/** Of the file as a whole, or of the size of what was found. */
const UNPLACED = new Set(['svg-scale', 'not-xml']);

const { numRuns, seed } = runs(500, 7000);
/** ms, on a busy machine. */
const TIME = 400_000 * Math.max(1, numRuns / 500);

describe('drawings are taken as Chromium paints them, or refused', () => {
  test(`${numRuns} random ones from seed ${seed}`, { timeout: TIME }, async () => {
    const { wrong, same } = await compare(Array.from({ length: numRuns }, (_, i) => randomDrawing(seed + i)));
    expect(wrong.slice(0, 5).join('\n\n')).toBe('');
    // Most are taken: a reader that refuses everything is never wrong either.
    expect(same).toBeGreaterThan(numRuns / 2);
  });

  test('and such as have slips of the hand in them', { timeout: TIME }, async () => {
    const { wrong, same } = await compare(
      Array.from({ length: numRuns / 2 }, (_, i) => slippedDrawing(seed + 1e6 + i)),
    );
    expect(wrong.slice(0, 5).join('\n\n')).toBe('');
    expect(same).toBeGreaterThan(numRuns / 20);
  });
});
