/** One PDF for a class: a page for the teacher, then for each student her sheets, her card, and what she practises on. */

import { plural, series } from '../../document/index.ts';
import type { StyledDrawing } from '../../drawing/index.ts';
import type { Units } from '../../length/index.ts';
import { inkOf, numbered, type SheetPlan } from '../../pagination/index.ts';
import type { CardTable } from '../card/index.ts';
import { type CardOf, drawCards } from '../card-sheets/index.ts';
import {
  type Deflate,
  drawSheets,
  drawTaped,
  type FontBytes,
  type PageContent,
  type PageSetup,
  type Pdf,
  startPdf,
  textWidthOf,
} from '../pdf/index.ts';

/** A drawing, and how it lies on sheets. */
export interface TapedDrawing {
  readonly title: string;
  readonly drawing: StyledDrawing;
  readonly plan: SheetPlan;
}

/** What one student takes home. */
export interface Packet {
  readonly name: string;
  /** What is told of her on the teacher's page: the piece, and the swags on it. */
  readonly piece: string;
  readonly swags: string;
  /** Her design, with a line each of what it is. */
  readonly mockup: TapedDrawing & { readonly summary: readonly string[] };
  readonly card: CardOf;
  /** The outline of the template, and empty frames to practise in: at true size, without a cover of their own. */
  readonly practice: readonly TapedDrawing[];
}

export interface ClassOptions {
  readonly title: string;
  readonly units: Units;
  readonly cautions: readonly string[];
  /** Of the cards. */
  readonly setup: PageSetup;
  /** Who is not in it. */
  readonly missing: readonly string[];
  readonly deflate: Deflate;
  readonly fonts: FontBytes;
}

export interface ClassPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

/** One student at least, and at most as many as a page has lines for. */
export const writeClass = async (packets: readonly Packet[], options: ClassOptions): Promise<ClassPdf> => {
  const { title, setup, deflate, fonts } = options;
  const [first] = packets;
  if (!first) throw new Error('A class without students');
  const pdf = await startPdf({ title, deflate, fonts, pickTray: first.mockup.plan.paper.inTray });
  // The teacher's page stands first, and says on which pages the others are: it is drawn when they are.
  const { width, height } = setup;
  const fronts = Array.from({ length: packets.length > ROWS_ON_FIRST ? 2 : 1 }, (_, i) =>
    pdf.page({ width, height, label: i === 0 ? 'Teacher' : 'Teacher 2' }),
  );
  const counts = packets.map((packet) => drawPacket(pdf, packet, options));
  const waiting = [...fronts];
  const page = (): PageContent => {
    const next = waiting.shift();
    if (!next) throw new Error('The teacher’s pages have no room for so many students');
    return next;
  };
  const total = counts.reduce((sum, count) => sum + count, fronts.length);
  const card = teacherCard(packets, counts, { ...options, fronts: fronts.length, total });
  drawCards({ ...pdf, page }, [card], setup);
  return {
    bytes: await pdf.finish(),
    pages: total,
  };
};

/** So many students are sure to have room under the words of the first page. */
const ROWS_ON_FIRST = 25;

/** How many sheets a student tapes. */
export const sheetsOf = ({ mockup, practice }: Packet): number =>
  [mockup, ...practice].reduce((sum, { plan }) => sum + plan.sheets.length, 0);

/** Who sews what, and how many sheets she tapes; `pages` tells where each one's are. */
export const studentTable = (packets: readonly Packet[], pages?: readonly string[]): CardTable => {
  const right = (head: string): CardTable['columns'][number] => ({ head, align: 'right' });
  const heads = ['piece', 'swags', 'sheets', ...(pages ? ['pages'] : [])];
  return {
    kind: 'table',
    name: 'Students',
    columns: [{ head: 'student' }, ...heads.map(right)],
    rows: packets.map((packet, i) => [
      packet.name,
      packet.piece,
      packet.swags,
      String(sheetsOf(packet)),
      ...(pages ? [pages[i]!] : []),
    ]),
    isWide: true,
  };
};

/** Returns how many pages it takes. */
const drawPacket = (pdf: Pdf, { name, mockup, card, practice }: Packet, options: ClassOptions): number => {
  const { units, cautions, setup } = options;
  const own: Pdf = { ...pdf, page: (page) => pdf.page({ ...page, label: `${name}: ${page.label}` }) };
  const { title, summary, drawing, plan } = mockup;
  const taped = drawTaped(own, drawing, plan, { title, summary, cautions, units });
  const cards = drawCards(own, [card], setup);
  const widthOf = textWidthOf(pdf.faces);
  // Her mock-up is A1, A2 …; what else is taped has a number before, so that no two of her sheets are called the same.
  for (const [i, one] of practice.entries())
    drawSheets(own, inkOf(one.drawing, widthOf), numbered(one.plan, i + 2), { title: one.title });
  return taped + cards + practice.reduce((sum, one) => sum + one.plan.sheets.length, 0);
};

/** The first of many names, and how many more there are. */
const shortSeries = (names: readonly string[]): string =>
  names.length <= MOST_NAMES
    ? series(names)
    : `${names.slice(0, MOST_NAMES).join(', ')} and ${names.length - MOST_NAMES} more`;
const MOST_NAMES = 8;

const teacherCard = (
  packets: readonly Packet[],
  counts: readonly number[],
  { title, missing, fronts, total }: ClassOptions & { readonly fronts: number; readonly total: number },
): CardOf => {
  let from = fronts + 1;
  const pages = counts.map((count) => {
    const first = from;
    from += count;
    return `${first}–${from - 1}`;
  });
  return {
    called: 'the teacher’s page',
    card: {
      title,
      summary: [
        `${plural(packets.length, 'student')}, ${total} pages with this one. Print at 100 %, and measure a check square before you print all.`,
        'For each: a cover, the mock-up, the marking card, the outline of the template with a spacer to cut out, and an empty frame of true size to practise in.',
        ...(missing.length > 0 ? [`Not in it: ${shortSeries(missing)}.`] : []),
      ],
      sections: [
        {
          id: 'marks',
          row: undefined,
          heading: 'Who sews what',
          blocks: [studentTable(packets, pages)],
        },
      ],
      marks: [],
    },
  };
};
