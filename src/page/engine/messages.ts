/**
 * What the page asks of its workers and what they answer: plain data both ways. A question carries all that it
 * needs, so that a worker can be stopped at any moment and another one asked again.
 */

import type { Box, Point } from '../../geometry/index.ts';
import type { Units } from '../../length/index.ts';
import type { CardSection, CardTable } from '../../output/card/index.ts';
import type { PaperId, PerEdge } from '../../pagination/index.ts';
import type { Level, LineSide, Marks, Mend, Picture as TracedPicture } from '../../trace/index.ts';

/** A template of the visitor's own: its file's name as plans say it (`./mine.yaml`), and what it holds. */
export interface OwnTemplate {
  readonly name: string;
  readonly text: string;
}

/** Everything that an answer depends on. */
export interface Input {
  /** The plan file's text. */
  readonly plan: string;
  readonly own: readonly OwnTemplate[];
  /** Which of the plan's fits was taken, by its key; the best one where there is none of that key. */
  readonly taken: string | undefined;
  /** The part that is open, by its name; the first where there is none of that name. */
  readonly part?: string | undefined;
  /** Of a plan with parts, the keys of the fits that were taken, by the parts' names. */
  readonly takenOf?: Readonly<Record<string, string>> | undefined;
}

export interface Trouble {
  /** A stable word for what is wrong; none where nothing is wrong with what she wrote. */
  readonly code?: string;
  /** One line, without the place. */
  readonly text: string;
  /** The key in the plan. */
  readonly key: string | undefined;
  /** `mine.yaml:3:5`, where it stands in a file that the visitor brought. */
  readonly where: string | undefined;
}

/** One kind of line: the paths that are drawn with it, as one piece of SVG path data. */
export interface Ink {
  /** The role of its lines in the drawing, such as `stitch`, `channel`, `seam`: what the page's style sheet goes by. */
  readonly name: string;
  readonly d: string;
}

export interface Lettering {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees, clockwise as screens have it. */
  readonly turn: number;
  readonly bold: boolean;
  readonly layer: string;
}

/** A drawing for the screen: mm at true size, y down. */
export interface Picture {
  readonly box: Box;
  readonly inks: readonly Ink[];
  readonly texts: readonly Lettering[];
}

/** The cloth of a design, its areas from the back: `fabric` and `middle`. */
export interface Cloth {
  readonly areas: readonly Ink[];
  /** By it the cloths of a quilt's parts are laid on one another: the larger lies below (mm²). */
  readonly size: number;
}

/** What the plan says, for the page's own fields. */
export interface PlanFacts {
  readonly title: string;
  readonly units: Units;
  readonly paper: PaperId;
  readonly templates: readonly string[];
  /** Widths as they were read, as a person reads them. */
  readonly outward: readonly string[];
  readonly inward: readonly string[];
  /** How far from the stitching each line lies: the widths up to it, added up. */
  readonly outwardAt: readonly string[];
  readonly inwardAt: readonly string[];
  readonly hasFills: boolean;
  /** Whether the plan itself decides anything about how the swag is made. */
  readonly decides: boolean;
}

interface SideFacts {
  readonly name: string;
  readonly repeats: number;
}

export interface SectionFacts {
  readonly number: number;
  /** `section 2 (vase)`. */
  readonly label: string;
  readonly d: string;
  /** Whether the swag starts with it, and whether it ends with it. */
  readonly starts: boolean;
  readonly ends: boolean;
}

export interface LookAnswer {
  readonly problems: readonly Trouble[];
  readonly facts: PlanFacts | undefined;
  readonly found: number;
  readonly chosen: Chosen | undefined;
}

/** Where a part lies on the whole quilt: the six numbers of each of its places (SVG matrices), and what they take. */
export interface Laid {
  readonly places: readonly (readonly number[])[];
  readonly box: Box;
}

/** Another part than the one that is open, for the picture of the whole quilt. */
export interface OtherPart {
  readonly name: string;
  /** Undefined where it does not work out. */
  readonly drawn: ({ readonly inks: readonly Ink[]; readonly cloth: Cloth } & Laid) | undefined;
  /** Why it does not. */
  readonly problems: readonly Trouble[];
}

export interface Chosen {
  readonly key: string;
  /** Its place in the ranking, from 1. */
  readonly number: number;
  readonly template: string;
  readonly summary: readonly string[];
  readonly lines: readonly string[];
  readonly sides: readonly SideFacts[];
  readonly corner: string | undefined;
  /** Whether its sides leave the corner squares free. */
  readonly hasSquares: boolean;
  /** What the whole of it is called: `border`. */
  readonly name: string;
  /** What the swags lie round. */
  readonly round: 'quilt' | 'block' | 'motif' | 'nothing';
  /** What the sheets show when nobody says, as the command's --show takes it. */
  readonly usualShow: string;
  readonly from: string;
  readonly to: string;
  /** The same as a plan says it: what `swag.from` and `swag.to` would be. */
  readonly ends: { readonly from: number | string; readonly to: number | string };
  readonly setting: string;
  readonly side: 'inside' | 'outside';
  readonly direction: 'heel-first' | 'crown-first';
  readonly quilt: Picture;
  readonly cloth: Cloth;
  /** Where that lies among the parts of a quilt; undefined where the plan is one design. */
  readonly laid: Laid | undefined;
  readonly messages: readonly string[];
}

export interface FitCard {
  readonly key: string;
  /** The keys of those that look like it. */
  readonly like: readonly string[];
  /** Its place among what looks different, from 1, and how many there are of that. */
  readonly number: number;
  readonly of: number;
  readonly caption: readonly string[];
  readonly picture: Picture;
}

export interface ShelfCard {
  /** As plans say it. */
  readonly name: string;
  readonly title: string;
  readonly picture: Picture | undefined;
  readonly about: string;
  readonly problems: readonly Trouble[];
}

/** A count that fits, for one side or a frame, or a depth of the corners, with the template set as it is now. */
export interface SwagStop {
  readonly key: string;
  readonly halfSpan: number;
  readonly depth: number;
  /** Undefined for a corner, which has no count. */
  readonly repeats: number | undefined;
  readonly words: string;
}

export interface SwagAnswer {
  /** A side's swag stands on its seam, a corner's across its mitre, one that closes round a motif over that. */
  readonly kind: 'side' | 'corner' | 'closed';
  readonly pose: SwagPose;
  /** The view, the same for every pose. */
  readonly box: Box;
  /** mm from start to crown, which no pose changes. */
  readonly chord: number;
  /** False where nothing is left to drag: a line or a flat gives the tilt, or the frame's motif does. */
  readonly turns: boolean;
  /** From the narrowest to the widest. */
  readonly stops: readonly SwagStop[];
  /** The template's edge by its sections, in the first half of the swag, where it stands now. */
  readonly sections: readonly SectionFacts[];
  /** Where on the edge it starts and ends, in words and as a plan says it; of a corner's own swag what is its own. */
  readonly uses: { readonly from: string; readonly to: string; readonly ends: Chosen['ends'] };
}

export interface SwagPose {
  readonly inks: readonly Ink[];
  readonly texts: readonly Lettering[];
  readonly halfSpan: number;
  readonly depth: number;
  /** What the lines are moved by (mm, y down) into the view. */
  readonly moved: Point;
  /** In the view (mm, y down): the crown's place without depth, and by what each mm of depth moves it. */
  readonly ground: Point;
  readonly deeper: Point;
  /** Start and stop marks in the view. */
  readonly ends: readonly [Point, Point];
  readonly words: string;
  /** What is in the way of this pose, if anything is. */
  readonly misfit: string | undefined;
}

export interface FillsAnswer {
  /** Each fill once, and the six numbers of every place that it goes to (SVG matrices). */
  readonly quilt: readonly FillCopies[];
  /** In the view of the large swag. */
  readonly swag: string;
  readonly messages: readonly string[];
  readonly problems: readonly Trouble[];
}

interface FillCopies {
  readonly d: string;
  readonly places: readonly (readonly number[])[];
}

export interface FillFacts {
  readonly name: string;
  readonly about: string;
  readonly suits: 'area' | 'band';
  /** What a plan may say of it besides the spacing. */
  readonly takes: readonly ('angle' | 'seed')[];
  /** Degrees, where a plan says none; undefined for a fill that takes none. */
  readonly usualAngle: number | undefined;
}

export interface PaperChoices {
  readonly paper: PaperId;
  /** What the 2 in square measured over what it should have. */
  readonly measured: PerEdge | undefined;
  /** As the command's --show takes it; undefined for what is usual. */
  readonly show: string | undefined;
}

export interface Printed {
  /** What the file is called. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the file holds. */
  readonly words: string;
  /** What she should know about it. */
  readonly notices: readonly string[];
}

/** What a class will be, before it is made. */
export interface ClassCount {
  /** `3 students, 29 sheets to tape` */
  readonly words: string;
  /** Who sews what, and how many sheets that takes. */
  readonly table: CardTable;
  /** Whose pieces cannot be made, a line each. */
  readonly troubles: readonly Trouble[];
}

export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** A template that was made from a drawing. */
export interface DrawnTemplate {
  /** The template's file. */
  readonly name: string;
  readonly text: string;
  /** What was found, in sentences. */
  readonly words: string;
}

/** A picture of a template, and what she has said of it. Places are pixels of the picture, as the browser turns it. */
export interface TraceInput {
  readonly file: Blob;
  /** The same, where the page itself has read it. */
  readonly read?: DecodedPicture;
  readonly fileName: string;
  /** Another one for each picture: what was worked out from it before is not worked out again. */
  readonly key: number;
  /** What the file said of its resolution, where it is our copy of hers (pixels per mm). */
  readonly ofFile: number | undefined;
  /** Undefined for what the file says, or the capture sheet in it. */
  readonly pixelsPerMm: number | undefined;
  /** Two marks of a ruler that told it, in pixels. */
  readonly marks: Marks | undefined;
  /** Which side of a drawn line; undefined for what suits how it looks. */
  readonly line: LineSide | undefined;
  readonly heel: Point | undefined;
  readonly crown: Point | undefined;
  /** Whether the edge runs the other way round the outline from the heel to the crown end. */
  readonly foot: 'left' | 'right' | undefined;
  readonly level: Level | undefined;
  readonly title: string;
  readonly units: Units;
  /** What the acrylic measures over what its outline does, where she laid the one on the other. */
  readonly correction: number;
  readonly mends: readonly Mend[];
  /** Undefined for the dots in the picture. */
  readonly breaks: readonly SaidBreak[] | undefined;
  /** Of the acrylic, and how high over the sheet the camera was (mm). */
  readonly thickness: number | undefined;
  readonly height: number | undefined;
  /** Etched lines, by their distance (mm) or a place that they run through. */
  readonly across: readonly { readonly name: string; readonly at: number | Point }[];
  readonly along: readonly (number | Point)[];
}

/** A picture as it is traced, and copies of it without anything that the file says besides its pixels. */
export interface DecodedPicture {
  readonly picture: TracedPicture;
  /** For a screen. */
  readonly shown: Blob;
  /** All of it, to be kept. */
  readonly kept: Blob;
  /** What the file says, or undefined. */
  readonly pixelsPerMm: number | undefined;
}

/** Points measured off a mat, and what she says of the acrylic. Places are mm, as the page draws them, y down. */
export interface PointsInput extends Pick<TraceInput, 'units' | 'breaks' | 'thickness' | 'across' | 'along'> {
  /** A template's file with the points, and no more than its title and units. */
  readonly text: string;
}

export interface PointsAnswer {
  readonly card: ShelfCard;
  /** Undefined where the points make no edge. */
  readonly outline: EdgeShown | undefined;
  /** Undefined where it makes no template yet. */
  readonly template: OwnTemplate | undefined;
}

export interface SaidBreak {
  readonly at: Point;
  readonly name: string;
}

export interface TraceAnswer {
  readonly width: number;
  readonly height: number;
  /** The picture, small enough for a screen; the first time only. */
  readonly shown: Blob | undefined;
  /** All of it, without anything that the file says besides its pixels; the first time only. */
  readonly kept: Blob | undefined;
  /** What the file itself says, or undefined. */
  readonly pixelsPerMm: number | undefined;
  /** Undefined where no outline was found. */
  readonly outline: TracedOutline | undefined;
  /** Undefined where it makes no template yet. */
  readonly template: OwnTemplate | undefined;
  /** What was found, and what to look at, a line each. */
  readonly words: readonly string[];
  readonly doubts: readonly string[];
  readonly problems: readonly Trouble[];
}

/** A working edge as it is drawn, in the picture's own unit, y down; and what lies along it. */
export interface EdgeShown {
  readonly pixelsPerMm: number;
  /** From the heel; undefined where none is found. */
  readonly edge: readonly Point[] | undefined;
  readonly breaks: readonly TracedBreak[];
  /** Etched lines as they are in the file, in the order in which she said them. */
  readonly across: readonly TracedLine[];
  readonly along: readonly TracedLine[];
  /** From the heel to the crown end, mm: along the edge, and straight. */
  readonly edgeLength: number;
  readonly chord: number;
}

export interface TracedOutline extends EdgeShown {
  readonly kind: 'solid' | 'line';
  /** Which side of a drawn line was taken. */
  readonly side: LineSide | undefined;
  readonly source: 'scan' | 'capture-sheet';
  /** Closed. */
  readonly points: readonly Point[];
  readonly corners: readonly Point[];
  /** Whether the foot is on its left as one looks at the picture. */
  readonly foot: 'left' | 'right' | undefined;
  readonly dots: readonly Point[];
}

export interface TracedBreak {
  readonly at: Point;
  /** From the heel along the edge, mm. */
  readonly along: number;
  readonly kind: 'notch' | 'corner' | 'mark';
  readonly name: string | undefined;
}

interface TracedLine {
  /** mm */
  readonly at: number;
  readonly points: readonly Point[];
}

export type PrintKind = 'sheets' | 'card' | 'audition' | 'frames' | 'contact' | QuiltPrintKind;
/** Of all parts of a quilt. */
export type QuiltPrintKind = 'quilt-sheets' | 'quilt-card';

/** Those that are sheets at true size. */
export type SheetsKind = 'sheets' | 'quilt-sheets';

/** All others: pages to read and not to tape, which are not counted without being laid out. */
export type PagesKind = Exclude<PrintKind, SheetsKind>;

/** How a picture of the quilt looks: in her colours, to show, or as a projector shines it onto the cloth. */
export type PictureLook =
  | { readonly kind: 'colours'; readonly withMarks: boolean }
  | { readonly kind: 'projector'; readonly show: string; readonly withFills: boolean };

export interface PictureAsked {
  readonly input: Input;
  readonly ending: 'png' | 'svg';
  /** All parts of a quilt, and not the open one alone. */
  readonly ofQuilt: boolean;
  readonly look: PictureLook;
  /** For a picture of pixels. */
  readonly fonts: Fonts | undefined;
}

export type Question =
  | { readonly kind: 'look'; readonly input: Input; readonly isMoving?: boolean }
  /** Whether a plan from outside can be read at all. */
  | { readonly kind: 'check'; readonly input: Input }
  /** The parts that are not open. */
  | { readonly kind: 'others'; readonly input: Input }
  | { readonly kind: 'fits'; readonly input: Input; readonly from: number; readonly count: number }
  | { readonly kind: 'words'; readonly input: Input }
  | { readonly kind: 'swag'; readonly input: Input; readonly side: string }
  | { readonly kind: 'drag'; readonly input: Input; readonly side: string; readonly halfSpan: number }
  | { readonly kind: 'decided'; readonly input: Input }
  | { readonly kind: 'shelf'; readonly own: readonly OwnTemplate[]; readonly units?: Units }
  | { readonly kind: 'fills'; readonly input: Input; readonly side: string }
  | { readonly kind: 'fill-list' }
  /** A drawing that is to become a template. */
  | { readonly kind: 'trace'; readonly picture: TraceInput }
  | { readonly kind: 'points'; readonly points: PointsInput }
  /** The sheet that a template is photographed on. */
  | { readonly kind: 'capture-sheet'; readonly paper: PaperId; readonly fonts: Fonts }
  | { readonly kind: 'drawing'; readonly fileName: string; readonly svg: string; readonly units: Units }
  | {
      readonly kind: 'print';
      readonly input: Input;
      readonly what: PrintKind;
      readonly choices: PaperChoices;
      readonly fonts: Fonts;
    }
  | ({ readonly kind: 'picture' } & PictureAsked)
  /** How many sheets there will be. */
  | { readonly kind: 'count-sheets'; readonly input: Input; readonly choices: PaperChoices }
  | { readonly kind: 'count-quilt-sheets'; readonly input: Input; readonly choices: PaperChoices }
  /** How much paper the others take. */
  | {
      readonly kind: 'count-pages';
      readonly input: Input;
      readonly what: readonly PagesKind[];
      /** Templates whose outlines are counted, as plans say them. */
      readonly outlines: readonly string[];
      readonly choices: PaperChoices;
      readonly fonts: Fonts;
    }
  /** A class: `table` is its text as it was pasted. */
  | {
      readonly kind: 'class-count';
      readonly input: Input;
      readonly table: string;
      readonly choices: PaperChoices;
    }
  | {
      readonly kind: 'class';
      readonly input: Input;
      readonly table: string;
      readonly choices: PaperChoices;
      readonly fonts: Fonts;
    }
  | {
      readonly kind: 'outline';
      /** As plans say it. */
      readonly name: string;
      readonly own: readonly OwnTemplate[];
      readonly choices: PaperChoices;
      readonly fonts: Fonts;
    };

export interface Answers {
  readonly look: LookAnswer;
  /** Its title. */
  readonly check: string;
  readonly others: readonly OtherPart[];
  readonly fits: readonly FitCard[];
  readonly words: readonly CardSection[];
  readonly swag: SwagAnswer | undefined;
  readonly drag: SwagPose | undefined;
  readonly decided: string | undefined;
  readonly shelf: readonly ShelfCard[];
  readonly fills: FillsAnswer;
  readonly 'fill-list': readonly FillFacts[];
  readonly drawing: DrawnTemplate;
  readonly trace: TraceAnswer;
  readonly points: PointsAnswer;
  readonly 'capture-sheet': Printed;
  readonly print: Printed;
  readonly picture: Printed;
  /** A line for each part. */
  readonly 'count-sheets': readonly string[];
  readonly 'count-quilt-sheets': readonly string[];
  /** By kind, or by template: `2 pages of Letter`. What cannot be made is not there. */
  readonly 'count-pages': Readonly<Record<string, string>>;
  readonly 'class-count': ClassCount;
  readonly class: Printed;
  readonly outline: Printed;
}

export type Kind = Question['kind'];

export interface Asked {
  readonly id: number;
  readonly question: Question;
}

export type Answered =
  | { readonly id: number; readonly ok: true; readonly answer: unknown }
  | { readonly id: number; readonly ok: false; readonly problems: readonly Trouble[] };
