/**
 * A plan as plain data: lengths in mm, angles in radians, every default filled in. What the plan leaves open
 * for the fit search to decide is `undefined`.
 */

import type { Point } from '../geometry/index.ts';
import type { LengthStyle, Units } from '../length/index.ts';
import type { Colours } from './colours.ts';
import type { PaperId } from './papers.ts';
import type { CountWish, Wish } from './wish.ts';

export interface Plan {
  /** Without one in the file, the file's name; of a part, the quilt's title and the part's name. */
  readonly title: string;
  /** Where the plan is one of the parts of a quilt. */
  readonly part?: Part;
  /** What the person measures in: lengths are shown to her in these. */
  readonly units: Units;
  readonly paper: PaperId;
  /** Needle to the foot's outer edge, mm. */
  readonly foot: { readonly clearance: number };
  /** At least one; names of profiles, or paths as they stand in the file. Those of all rows and corners, the first row's first. */
  readonly templates: readonly string[];
  readonly layout: Layout;
  readonly swag: SwagChoices;
  /** How the swag over each corner is made; undefined where it is made as on the sides. */
  readonly corner: CornerMade | undefined;
  /** Rows beyond the first, from the near one; none where there is one row only. */
  readonly rows: readonly FurtherRow[];
  readonly channels: Channels;
  readonly fills: Fills;
  /** mm from stitch to stitch. */
  readonly stitch: { readonly length: number };
  /** How marks are rounded, and how lengths are written. */
  readonly marks: { readonly style: LengthStyle };
  readonly colours: Colours;
  /** What speaks against its measures, a sentence each, to be read wherever they are used. */
  readonly doubts: readonly string[];
}

/** A design's name and places among the parts of a quilt. */
export interface Part {
  readonly name: string;
  /** The title of the whole quilt. */
  readonly quilt: string;
  /** The part's middle, or those of its copies, right and up from the quilt's middle, mm. */
  readonly places: readonly Point[];
  /** Radians, counterclockwise. */
  readonly turn: number;
}

export type Layout = Strip | Border | Frame;

/** Kept clear along the seam that the swags leave from in a strip; in a border, along the quilt and the outside. */
interface Margin {
  readonly inner: number;
  readonly outer: number;
}

/** One straight strip with swags along one of its long sides. */
export interface Strip {
  readonly kind: 'strip';
  readonly length: number;
  readonly width: number;
  readonly margin: Margin;
  /** mm kept clear at both its ends. */
  readonly ends: number;
}

/** A border round a quilt, on square corners: its outer edge is two widths longer than its inner one. */
export interface Border {
  readonly kind: 'border';
  readonly width: number;
  /** mm of each side along the inner seam, corner to corner. */
  readonly inner: Readonly<Record<Side, number>>;
  /** Along which of its edges it was measured, and under which key its sides stand in the plan. */
  readonly measured: Seam;
  readonly margin: Margin;
  /** The seam that the swags leave from. */
  readonly from: Seam;
  /** Undefined for the search to decide. */
  readonly corners: CornerTreatment | undefined;
  /** What it lies round, and so under which key it stands in the plan: a quilt's `border`, or a block's `frame`. */
  readonly round: 'quilt' | 'block';
}

/** Swags closed round a circle that clears a motif. */
export interface Frame {
  readonly kind: 'frame';
  /** How many swags; undefined for the search to decide. */
  readonly count: number | undefined;
  /** The motif's width across, mm: a circle of this diameter holds it. */
  readonly around: number;
  /** mm kept clear round the motif. */
  readonly clearance: number;
  /** The finished frame's greatest width across, mm. */
  readonly within: number | undefined;
  /** The circle that the swags leave from: the inner one, pointing outward, or the outer one, pointing inward. */
  readonly from: Seam;
}

/** Clockwise from the top, as lists of four are. */
export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type Side = (typeof SIDES)[number];
export type Seam = 'inner' | 'outer';
export type CornerTreatment = 'turn' | 'across' | 'half' | 'meet' | 'open';

/** What there is to do at a corner: a swag that stands across it leaves the outer seam, and no other. */
export const cornersFrom = (from: Seam): readonly CornerTreatment[] =>
  from === 'outer' ? ['turn', 'across', 'half', 'meet', 'open'] : ['turn', 'half', 'meet', 'open'];

export type SettingName = 'crown-on-centre' | 'alignment-line' | 'flat-on-guide';

/** A place on a template's edge, as a plan names it; which place that is depends on the template. */
export type Spot =
  | { readonly kind: 'section'; readonly number: number }
  /** A section's name, or an alignment line's. */
  | { readonly kind: 'named'; readonly name: string }
  | { readonly kind: 'heel' }
  | { readonly kind: 'crown' };

/** A row of swags beyond another, on the same marks: each swag as wide as that row's, and a depth of its own. */
export interface FurtherRow {
  /** mm from the other row's start line to its own; where it is 0 both rows start on one mark. */
  readonly at: number;
  /** mm that its stitching keeps from the other row's. */
  readonly apart: number;
  readonly swag: HowMade;
}

/** How a half swag is made. Every choice is undefined where the plan leaves it open. */
export interface HowMade {
  /** Names out of the plan's: those that are searched. */
  readonly templates: readonly string[];
  readonly from: Spot | undefined;
  readonly to: Spot | undefined;
  readonly setting: SettingName | undefined;
  /** How an alignment line lies: on the start mark's line, square to the seam, or along the line the swags start on. */
  readonly laid: 'square' | 'along' | undefined;
  /** Which flat is laid along the guide line, counted from 1 at the heel. */
  readonly flat: number | undefined;
  /** Whether the template lies inside or outside the swag. */
  readonly side: 'inside' | 'outside' | undefined;
  readonly direction: 'heel-first' | 'crown-first' | undefined;
}

/** How the swag over a corner is made. */
export interface CornerMade extends HowMade {
  /** Whether its two halves are to be one smooth curve where they meet on the mitre, and no point. */
  readonly smooth: boolean;
}

/** A kind of swag: how it is made, and how wide and how deep (mm) it is to be. */
export interface KindChoices extends HowMade {
  readonly span: Wish | undefined;
  readonly depth: Wish | undefined;
}

interface SwagChoices extends KindChoices {
  /** Two kinds that take turns along a side, the first one at both its ends; undefined where all are of one kind. */
  readonly alternate: readonly [KindChoices, KindChoices] | undefined;
  /** The share of the band's room that stitching and channels are to reach, 0 to 1. */
  readonly use: Wish | undefined;
  /** One for all sides, or four: top, right, bottom, left. */
  readonly repeats: readonly (CountWish | undefined)[] | undefined;
  /** mm between neighbours; `auto` for the least that serves. */
  readonly gap: Wish | 'auto' | undefined;
}

/** Widths in mm of one band after the other, outward and inward from the stitching. */
export interface Channels {
  readonly outward: readonly number[];
  readonly inward: readonly number[];
  /** How a channel turns at a point of the stitching: rolled round it, or pivoted, which keeps the point. */
  readonly points: 'round' | 'pivot';
}

/** A fill by its name; whether there is such a fill is for the fills to say. */
export interface Fill {
  readonly kind: string;
  /** mm */
  readonly spacing?: number;
  readonly seed?: number;
  /** Radians, counterclockwise from the seam. */
  readonly angle?: number;
}

interface Fills {
  readonly swag: Fill | undefined;
  readonly background: Fill | undefined;
  readonly corner: Fill | undefined;
  /** Between two rows. */
  readonly between: Fill | undefined;
  /** For the first channel, the second, …, outward ones first. */
  readonly channels: readonly Fill[];
}
