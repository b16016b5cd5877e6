/** A class that sews one design, each student on a piece of her own: all that is printed for them, as one file. */

import { type Problem, ProblemError, plural, withValues } from '../document/index.ts';
import { drawPlan, drawTemplate, SHEET, styled } from '../drawing/index.ts';
import { formatLength } from '../length/index.ts';
import type { CardTable } from '../output/card/index.ts';
import { type Packet, sheetsOf, studentTable, type TapedDrawing, writeClass } from '../output/class/index.ts';
import { CAUTIONS, describeDesign, usualShow } from '../output/mockup/index.ts';
import { shownDrawing } from '../output/view/index.ts';
import { layOut } from '../pagination/index.ts';
import { hasEnds, layoutKey, type Plan, readPlan, type Student } from '../plan/index.ts';
import { designFromPlan } from '../swag/index.ts';
import type { Template } from '../template/index.ts';
import { cardsFor } from './card.ts';
import { drawnPart } from './drawn-part.ts';
import { type Made, type Means, pdfMeans } from './made.ts';
import { pageSetups, type SheetsWanted } from './pages.ts';
import { type Part, shownOf, shownWords } from './part.ts';
import { MOST_SHEETS_TOGETHER } from './taped-sheets.ts';
import { unprintable } from './unprintable.ts';

/** The plan of the class as it is written, with its templates; a strip, since a piece is told by its length and width. */
export interface ClassPlan {
  readonly text: string;
  readonly fileName: string;
  readonly plan: Plan;
  readonly templates: readonly Template[];
}

/** What a plan with parts is told. */
export const PARTS_IN_CLASS: Problem = {
  code: 'parts-in-class',
  message: 'a class sews one design, and this plan has parts',
  hint: 'make a plan of the strip alone',
};

export interface ClassSheets extends Made {
  readonly students: number;
  /** Of the students for whom nothing could be made. */
  readonly problems: readonly Problem[];
}

/** A class laid out, before any of it is written. */
interface LaidClass {
  readonly from: ClassPlan;
  readonly packets: readonly Packet[];
  /** To tape, of all students. */
  readonly sheets: number;
  readonly problems: readonly Problem[];
  readonly layout: SheetsWanted;
  /** Who is not in it. */
  readonly missing: readonly string[];
}

export interface CountedClass {
  /** `3 students, 29 sheets to tape` */
  readonly words: string;
  /** Who sews what, and how many sheets that takes. */
  readonly table: CardTable;
  /** Of the students for whom nothing can be made. */
  readonly problems: readonly Problem[];
}

/** Throws a ProblemError where the plan is none for a class, or where nothing can be made for any student. */
export const classSheets = async (
  from: ClassPlan,
  students: readonly Student[],
  unread: readonly Problem[],
  layout: SheetsWanted,
  means: Means,
): Promise<ClassSheets> => writeLaid(layClass(from, students, unread, layout), means);

/** How many sheets it takes, before they are made. Throws as `classSheets` does. */
export const countClass = (
  from: ClassPlan,
  students: readonly Student[],
  unread: readonly Problem[],
  layout: SheetsWanted,
): CountedClass => {
  const { packets, sheets, problems } = layClass(from, students, unread, layout);
  return {
    words: `${plural(packets.length, 'student')}, ${plural(sheets, 'sheet')} to tape`,
    table: studentTable(packets),
    problems,
  };
};

const layClass = (
  from: ClassPlan,
  students: readonly Student[],
  unread: readonly Problem[],
  layout: SheetsWanted,
): LaidClass => {
  const { plan } = from;
  if (!hasEnds(plan.layout))
    throw new ProblemError([
      {
        code: 'not-a-strip',
        key: 'layout',
        message: 'a class sews strips: each piece is told by its length and width',
        found: layoutKey(plan.layout),
        expected: 'a strip',
      },
    ]);
  const packets: Packet[] = [];
  const failed: { readonly student: Student; readonly own: readonly Problem[] }[] = [];
  let sheets = 0;
  for (const student of students) {
    try {
      const packet = packetFor(partFor(from, student), student, layout);
      packets.push(packet);
      sheets += sheetsOf(packet);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      failed.push({ student, own: error.problems });
    }
    // Told before the rest are laid out, which would take as long.
    if (sheets > MOST_SHEETS_TOGETHER)
      throw new ProblemError([
        {
          code: 'too-many-sheets',
          message: 'the sheets of the class are too many for one file',
          found: `${sheets} of the first ${plural(packets.length, 'student')}`,
          expected: `at most ${MOST_SHEETS_TOGETHER} of all`,
          hint: 'take shorter pieces, or fewer students at a time',
        },
      ]);
  }
  const lineOf = ({ place }: Problem): number => place?.line ?? 0;
  const problems = [
    ...unread,
    ...failed.flatMap(({ student, own }) => own.map((problem) => ofStudent(problem, student))),
  ].sort((a, b) => lineOf(a) - lineOf(b));
  if (packets.length === 0) throw new ProblemError(isOfAll(failed) ? failed[0]!.own : problems);
  const names = new Set(packets.map(({ name }) => name));
  const missing = students.map(({ name }) => name).filter((name) => !names.has(name));
  return { from, packets, sheets, problems, layout, missing };
};

const writeLaid = async (
  { from: { plan, templates }, packets, sheets, problems, layout, missing }: LaidClass,
  means: Means,
): Promise<ClassSheets> => {
  const { paper, margins } = layout;
  const [setup] = pageSetups({ paper, margins }, ['portrait']);
  if (!setup) throw new Error('A card has one paper');
  const { bytes, pages } = await writeClass(packets, {
    title: plan.title,
    units: plan.units,
    cautions: CAUTIONS,
    setup,
    missing,
    ...(await pdfMeans(means)),
  });
  const letters = [plan.title, ...packets.map(({ name }) => name)].join('');
  return {
    bytes,
    words: `${plural(packets.length, 'student')}, ${plural(pages, 'page')}, ${plural(sheets, 'sheet')} of them to tape`,
    notices: await unprintable(letters, templates, means),
    students: packets.length,
    problems,
  };
};

/** What is wrong with the template is the plan's own, and told once. */
const isOfAll = (failed: readonly { readonly own: readonly Problem[] }[]): boolean =>
  new Set(failed.map(({ own }) => JSON.stringify(own))).size === 1 &&
  failed[0]!.own.every(({ key = '' }) => key.startsWith('template'));

/** The plan with one student's piece in it. Throws a ProblemError where nothing can be made on that. */
const partFor = ({ text, fileName, plan, templates }: ClassPlan, { name, length, width }: Student): Part => {
  const piece = ['layout', layoutKey(plan.layout)];
  const reading = readPlan(
    withValues(text, [
      [['title'], `${plan.title}: ${name}`],
      [[...piece, 'length'], length],
      ...(width === undefined ? [] : [[[...piece, 'width'], width] as const]),
    ]),
    fileName,
  );
  if (!reading.ok) throw new ProblemError(reading.problems);
  const own = reading.parts[0].plan;
  const made = designFromPlan(own, templates);
  if (!made.ok) throw new ProblemError(made.problems);
  return { name: undefined, plan: own, templates, design: made.design, placed: (problem) => problem };
};

/** What is wrong with a piece is wrong in the student's own line, whatever it does to the plan. */
const ofStudent = ({ key, ...problem }: Problem, { name, place }: Student): Problem => ({
  ...problem,
  place,
  message: `${name}: ${problem.message}`,
  ...(key !== undefined && { key: key.replace(/^layout\.\w+\./, '') }),
});

const packetFor = (part: Part, { name }: Student, layout: SheetsWanted): Packet => {
  const { plan, design } = part;
  const { title, units, marks } = plan;
  if (!hasEnds(plan.layout)) throw new Error('A piece of a class is a strip');
  const options = { ...layout, units };
  const taped = (drawing: TapedDrawing['drawing'], called: string): TapedDrawing => ({
    title: called,
    drawing,
    plan: layOut(drawing, options),
  });
  const shown = shownOf(design, usualShow(design));
  const { drawing } = drawnPart(part, shown, []);
  const repeat = shownOf(design, 'repeat');
  const empty = drawPlan(repeat.design, plan, repeat.scope, { ghosts: false, withFills: false }).drawing;
  const { stitching } = design.fit.way.shape;
  const outline = styled(drawTemplate(stitching, stitching.template.title), SHEET);
  const length = (mm: number): string => formatLength(mm, marks.style);
  const [side] = design.fit.sides;
  const [card] = cardsFor(title, [part]);
  return {
    name,
    piece: `${length(plan.layout.length)} × ${length(plan.layout.width)}`,
    swags: side ? `${side.repeats} of ${length(2 * side.seat.pose.halfSpan)}` : '',
    mockup: {
      ...taped(shownDrawing(drawing, { without: [] }), title),
      summary: [
        shownWords(shown),
        ...describeDesign(shown.design, marks.style, plan.channels),
        ...plan.doubts,
      ],
    },
    card: card!,
    practice: [
      taped(outline, `${title}: ${stitching.template.title}`),
      taped(shownDrawing(styled(empty, SHEET), { without: [] }), `${title}: practice`),
    ],
  };
};
