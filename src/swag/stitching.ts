/**
 * What one template can stitch at one clearance: the foot rolled along it once, and the places at which a
 * swag may start and end on it.
 */

import {
  type EdgeFault,
  endAlong,
  firstMeetingWithLine,
  type Piece,
  pathLength,
  pieceDirection,
  pieceLength,
  rollFoot,
  type StitchedEdge,
  startAlong,
} from '../geometry/index.ts';
import { type AlignmentLine, type Section, sectionsOf, type Template } from '../template/index.ts';

/** A template with the way of the needle round it. */
export interface Stitching {
  readonly template: Template;
  readonly stitched: StitchedEdge;
  readonly sections: readonly Section[];
}

/** What a place on a template is called. */
export interface PlaceName {
  /** In a table: `heel`, `section 2 (shoulder)`, `line A`, `crown end`. */
  readonly label: string;
  /** The same without the section's own name. */
  readonly brief: string;
  /** In a sentence: `the heel`, `the start of section 2 (shoulder)`, `line A`, `the crown end`. */
  readonly spoken: string;
}

/** A place at which the stitching of a half swag starts or ends. */
export interface Stop extends PlaceName {
  /** mm along the stitched path. */
  readonly along: number;
  /** mm along the edge; undefined for an etched line, which is no place on the edge. */
  readonly contact: number | undefined;
  /** The section that starts here (a start), or that ends here (an end). */
  readonly section: number | undefined;
  readonly line: AlignmentLine | undefined;
}

/** How far round its last corner a template lets the foot roll: a quarter turn. Beyond that the crown would turn back. */
const CROWN_ROLL = Math.PI / 2;

export type Stitched =
  | { readonly ok: true; readonly stitching: Stitching }
  | { readonly ok: false; readonly fault: EdgeFault };

/** Rolls the foot (clearance in mm) along a template's edge. */
export const stitchTemplate = (template: Template, clearance: number): Stitched => {
  const rolled = rollFoot(template.edge, clearance, template.rollsRoundCrown ? { roundEnd: CROWN_ROLL } : {});
  if (!rolled.ok) return rolled;
  const sections = sectionsOf(template, pathLength(template.edge));
  return { ok: true, stitching: { template, stitched: rolled.value, sections } };
};

/** Every section start, in order from the heel. */
export const startStops = ({ stitched, sections }: Stitching): readonly Stop[] =>
  sections.map((s) => ({
    ...(s.number === 1 ? HEEL : sectionName(s, '', 'the start of ')),
    along: startAlong(stitched, s.from),
    contact: s.from,
    section: s.number,
    line: undefined,
  }));

/** Every section end, in order from the heel; the last is the crown end. */
export const endStops = ({ stitched, sections }: Stitching): readonly Stop[] =>
  sections.map((s, i) => {
    const isCrown = i === sections.length - 1;
    return {
      ...(isCrown ? CROWN_END : sectionName(s, 'end of ', 'the end of ')),
      along: isCrown ? pathLength(stitched.path) - crownRoll(stitched) : endAlong(stitched, s.to),
      contact: s.to,
      section: s.number,
      line: undefined,
    };
  });

/** Where the needle's way crosses each etched alignment line for the first time; lines it never crosses are left out. */
export const lineStops = ({ template, stitched }: Stitching): readonly Stop[] =>
  template.alignment.flatMap((line) => {
    const first = firstMeetingWithLine(
      stitched.path,
      { x: line.at, y: 0 },
      { x: 0, y: 1 },
      Number.NEGATIVE_INFINITY,
    );
    if (!first) return [];
    return [
      { ...sameName(`line ${line.name}`), along: first.along, contact: undefined, section: undefined, line },
    ];
  });

export const HEEL: PlaceName = { label: 'heel', brief: 'heel', spoken: 'the heel' };
export const CROWN_END: PlaceName = { label: 'crown end', brief: 'crown end', spoken: 'the crown end' };

/** A place that is called the same wherever it is named. */
export const sameName = (name: string): PlaceName => ({ label: name, brief: name, spoken: name });

const sectionName = (s: Section, listed: string, said: string): PlaceName => ({
  label: listed + sectionLabel(s),
  brief: `${listed}section ${s.number}`,
  spoken: said + sectionLabel(s),
});

const sectionLabel = (s: Section): string =>
  s.name ? `section ${s.number} (${s.name})` : `section ${s.number}`;

/** The length of the roll round the crown's corner, which a swag that ends at the crown does not use. */
const crownRoll = (stitched: StitchedEdge): number => {
  const last = stitched.contacts.at(-1);
  const piece = stitched.path.pieces.at(-1);
  if (!last || !piece || last.from !== last.to || last.to < stitched.edgeLength) return 0;
  return pieceLength(piece);
};

/** A straight stretch of the edge that can be laid along a drawn line. */
export interface Flat {
  /** Counted from 1 at the heel. */
  readonly number: number;
  readonly label: string;
  /** mm along the edge. */
  readonly from: number;
  readonly to: number;
  /** Its direction in the template's own frame, radians. */
  readonly angle: number;
  readonly piece: Piece;
}

/** A shorter straight stretch cannot be laid by eye along a drawn line (mm; common practice, no source). */
const SHORTEST_FLAT = 12;

export const flatsOf = ({ template, sections }: Stitching): readonly Flat[] => {
  let at = 0;
  const found = template.edge.pieces.flatMap((piece) => {
    const from = at;
    at += pieceLength(piece);
    if (piece.kind !== 'line' || at - from < SHORTEST_FLAT) return [];
    const section = sections.find((s) => from >= s.from - 1e-6 && from < s.to - 1e-6);
    return [{ piece, from, to: at, section }];
  });
  return found.map(({ piece, from, to, section }, i): Flat => {
    const d = pieceDirection(piece, 0);
    const beside = found.filter((f) => f.section === section);
    const number = found.slice(0, i + 1).filter((f) => f.section === section).length;
    const flat = beside.length > 1 ? `flat ${number} from the heel in` : 'the flat of';
    return {
      number: i + 1,
      label: section ? `${flat} ${sectionLabel(section)}` : 'the flat',
      from,
      to,
      angle: Math.atan2(d.y, d.x),
      piece,
    };
  });
};

/**
 * Where two arcs of a traced edge meet a hair out of line, the foot misses a hair of it. Places that stay farther
 * from the stitching than the clearance by less than this (mm) are not worth a word.
 */
const LEAST_MISS = 0.1;

/** The places that the foot does not reach and that a person should know of. */
export const telling = (stitched: StitchedEdge): StitchedEdge['unreached'] =>
  stitched.unreached.filter((u) => u.away - stitched.clearance >= LEAST_MISS);
