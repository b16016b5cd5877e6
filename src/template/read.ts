/** Reads a template file: keys and lengths first, then the edge, then what only the whole can tell. */

import {
  baseName,
  checkDocument,
  type KeyPath,
  keyName,
  type Place,
  type Problem,
  placeOf,
  quoted,
  readDocument,
  type SourceDocument,
  unitsOf,
  valueAt,
} from '../document/index.ts';
import {
  distance,
  findEdgeFault,
  locate,
  type Path,
  type Point,
  pathBox,
  pathEnd,
  pathLength,
  pathStart,
  pieceLength,
} from '../geometry/index.ts';
import { formatLength, lengthsApart, MM_PER, MM_PER_INCH, type Units } from '../length/index.ts';
import { findBreaks } from './breaks.ts';
import {
  type Edge,
  type EdgeReading,
  type EdgeStep,
  edgeFromSteps,
  edgeFromSvg,
  MOST_PIECES,
} from './edge.ts';
import { acrossAt, styleIn } from './etched.ts';
import { edgeFromPoints } from './measured.ts';
import { FARTHEST, type TemplateFile, templateSchema } from './schema.ts';
import type { Template } from './template.ts';

export type TemplateReading =
  | {
      readonly ok: true;
      readonly template: Template;
      /** The place in the file of what makes the edge at a length from the heel (mm). */
      readonly placeAlong: (at: number) => Place;
      /** The place of a key, such as `['thickness']`. */
      readonly placeAt: (path: KeyPath) => Place;
      /** What a bare number in the file is in. */
      readonly units: Units;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** An edge shorter than this (mm, 3/16 in) is no template; longer than 120 in no table holds it. */
const SHORTEST_EDGE = (3 / 16) * MM_PER_INCH;
const LONGEST_EDGE = 120 * MM_PER_INCH;

/** So many lines and arcs on so short a stretch as the shortest edge are 0.02 mm each: no blade cuts them. */
const MOST_IN_A_STRETCH = 250;

/** Path data may make arcs as large as the solar system, and no ruler has words for them. */
const A_KILOMETRE = 1e6;

/** Heel and crown end are at least this far apart (mm): below it there is no chord to make a swag from. */
const LEAST_CHORD = 1;

/** Keys that hold words, whatever they look like. */
const TEXTS: ReadonlySet<string> = new Set(['title', 'name', 'break']);

/** Never throws; `text` is the file's content, `fileName` its name as the user gave it. */
export const readTemplate = (text: string, fileName: string): TemplateReading => {
  const reading = readDocument(text, fileName, TEXTS);
  if (!reading.ok) return reading;
  const { document } = reading;
  const misplaced = wholeEdgeAsStep(document);
  if (misplaced) return { ok: false, problems: [misplaced] };
  const checked = checkDocument(document, templateSchema(unitsOf(document)));
  if (!checked.ok) return checked;
  const file = checked.value;
  const edge = readEdge(file);
  if (!edge.ok) return { ok: false, problems: edge.faults.map((f) => stepProblem(document, f)) };
  const problems = [...wholeEdge(document, edge.edge, file.units), ...etchedLines(document, file)];
  if (problems.length > 0) return { ok: false, problems };
  const { path, stepOfPiece, named } = edge.edge;
  const name = baseName(fileName);
  return {
    ok: true,
    template: {
      name,
      title: file.title ?? name,
      thickness: file.thickness,
      edge: path,
      breaks: findBreaks(path, named),
      alignment: file.alignment.map((line) => ({ ...line, at: acrossAt(path, line.at) })),
      channelLines: [...file.channelLines].sort((a, b) => a - b),
      rollsRoundCrown: file.crownEnd === 'corner',
    },
    placeAlong: (at) => placeOf(document, stepPath(document, stepOfPiece[locate(path, at)?.index ?? 0])),
    placeAt: (keyPath) => placeOf(document, keyPath),
    units: file.units,
  };
};

/** `edge: - points: …`: a dash too many, and the schema would speak of the keys of steps. */
const wholeEdgeAsStep = (document: SourceDocument): Problem | undefined => {
  const edge = valueAt(document, ['edge']);
  if (!Array.isArray(edge)) return undefined;
  for (const [i, step] of edge.entries())
    for (const [key, example] of WHOLE_EDGES)
      if (typeof step === 'object' && step !== null && Object.hasOwn(step, key))
        return problemAt(
          document,
          ['edge', i, key],
          'misplaced-key',
          `${key} is a whole edge, and no step of one`,
          {
            expected: `edge: { ${key}: ${example} }, with no dash before ${key} and no steps beside it`,
          },
        );
  return undefined;
};

const WHOLE_EDGES = [
  ['points', '[[0, 0], [1, 3/4], [2, 1]]'],
  ['svg', '"M 0 0 L 100 0"'],
] as const;

const readEdge = (file: TemplateFile): EdgeReading => {
  const { edge } = file;
  if (Array.isArray(edge)) return edgeFromSteps(edge.map(stepOf));
  if (edge.points) return edgeFromPoints(edge.points, edge.tolerance, file.units);
  const unit = edge.unit ?? file.units;
  return edgeFromSvg(edge.svg ?? '', MM_PER[unit]);
};

type FileStep = Extract<TemplateFile['edge'], readonly unknown[]>[number];

/** The schema has seen to it that each step has exactly one key. */
const stepOf = (step: FileStep): EdgeStep => {
  if (step.start) return { kind: 'start', at: pointOf(step.start) };
  if (step.line) return { kind: 'line', to: pointOf(step.line.to) };
  if (step.arc?.through)
    return { kind: 'arc-through', to: pointOf(step.arc.to), through: pointOf(step.arc.through) };
  if (step.arc) return { kind: 'arc', to: pointOf(step.arc.to), rise: step.arc.rise ?? 0 };
  if (step.curve) {
    const [first, second] = step.curve.handles;
    return { kind: 'curve', to: pointOf(step.curve.to), handles: [pointOf(first), pointOf(second)] };
  }
  return { kind: 'break', name: step.break ?? '' };
};

const pointOf = ([x, y]: readonly [number, number]): Point => ({ x, y });

const stepPath = (document: SourceDocument, step: number | undefined): KeyPath => {
  if (step === undefined) return ['edge'];
  if (Array.isArray(valueAt(document, ['edge']))) return ['edge', step];
  return Array.isArray(valueAt(document, ['edge', 'points'])) ? ['edge', 'points', step] : ['edge'];
};

const problemAt = (
  document: SourceDocument,
  path: KeyPath,
  code: string,
  message: string,
  rest: Partial<Problem> = {},
): Problem => ({ code, message, place: placeOf(document, path), key: keyName(path), ...rest });

const stepProblem = (
  document: SourceDocument,
  { step, message, ...rest }: Extract<EdgeReading, { ok: false }>['faults'][number],
): Problem => problemAt(document, stepPath(document, step), 'edge', message, rest);

/** What can only be told of the whole edge. The first that is found makes the rest pointless. */
const wholeEdge = (document: SourceDocument, { path, stepOfPiece }: Edge, units: Units): Problem[] => {
  const length = pathLength(path);
  const style = styleIn(units);
  const say = (mm: number): string => formatLength(mm, style);
  const size = (message: string, which: string, limit: number): Problem[] => {
    const [found, expected] =
      length <= A_KILOMETRE
        ? lengthsApart(length, limit, style)
        : (['more than a kilometre', say(limit)] as const);
    return [
      problemAt(document, ['edge'], 'edge', message, { found, expected: `${which} ${expected} in all` }),
    ];
  };
  if (!(length >= SHORTEST_EDGE)) return size('the edge is too short', 'at least', SHORTEST_EDGE);
  if (!(length <= LONGEST_EDGE)) return size('the edge is too long', 'at most', LONGEST_EDGE);
  const { minX, minY, maxX, maxY } = pathBox(path);
  if (!(Math.max(-minX, -minY, maxX, maxY) <= FARTHEST))
    return [
      problemAt(document, ['edge'], 'edge', 'the edge lies too far from its origin', {
        expected: `coordinates up to ${say(FARTHEST)}`,
      }),
    ];
  if (path.pieces.length > MOST_PIECES)
    return [
      problemAt(document, ['edge'], 'edge', 'the edge is too finely drawn', {
        found: `${path.pieces.length} lines and arcs`,
        expected: `at most ${MOST_PIECES}`,
      }),
    ];
  if (isCrowded(path))
    return [
      problemAt(document, ['edge'], 'edge', 'the edge is too finely drawn', {
        found: `more than ${MOST_IN_A_STRETCH} lines and arcs within ${say(SHORTEST_EDGE)}`,
        expected: `at most ${MOST_IN_A_STRETCH}`,
      }),
    ];
  const fault = crossing(document, path, stepOfPiece, say);
  if (fault) return [fault];
  const heel = pathStart(path);
  const crown = pathEnd(path);
  if (!(heel && crown && distance(heel, crown) >= LEAST_CHORD))
    return [
      problemAt(document, ['edge'], 'edge', 'the edge ends where it begins', {
        expected: 'a crown end away from the heel',
      }),
    ];
  return [];
};

/** The rolling foot compares each piece with all that lie within its reach, and with thousands takes minutes. */
const isCrowded = ({ pieces }: Path): boolean => {
  let length = 0;
  return pieces.some((piece, i) => {
    length += pieceLength(piece);
    if (i < MOST_IN_A_STRETCH) return false;
    const is = length < SHORTEST_EDGE;
    length -= pieceLength(pieces[i - MOST_IN_A_STRETCH]!);
    return is;
  });
};

const crossing = (
  document: SourceDocument,
  path: Path,
  stepOfPiece: readonly number[],
  say: (mm: number) => string,
): Problem | undefined => {
  const fault = findEdgeFault(path);
  if (!fault) return undefined;
  if (fault.kind !== 'crosses-itself')
    return problemAt(document, ['edge'], 'edge', 'the edge is not one unbroken line');
  const [first, second] = fault.pieces.map((i) => stepPath(document, stepOfPiece[i])) as [KeyPath, KeyPath];
  const line = placeOf(document, first).line;
  const other = keyName(first) === keyName(second) ? 'itself' : `the step on line ${line}`;
  return problemAt(document, second, 'edge-crosses', `the edge crosses ${other}`, {
    found: `a crossing at [${say(fault.at.x)}, ${say(fault.at.y)}]`,
  });
};

const etchedLines = (document: SourceDocument, file: TemplateFile): Problem[] => {
  const problems: Problem[] = [];
  file.alignment.forEach((line, i) => {
    if (file.alignment.findIndex((other) => other.name === line.name) < i)
      problems.push(
        problemAt(
          document,
          ['alignment', i, 'name'],
          'same-name',
          `two lines are named ${quoted(line.name)}`,
          {
            expected: 'a name of its own for each line',
          },
        ),
      );
  });
  file.channelLines.forEach((distance, i) => {
    if (file.channelLines.indexOf(distance) < i)
      problems.push(
        problemAt(document, ['channelLines', i], 'same-line', 'two lines at the same distance', {
          expected: 'each distance once',
        }),
      );
  });
  return problems;
};
