/** What a fill is: closed areas in, stitchable paths out. */

import { isEmptyRegion, type Path, type Point, type Region, regionArea } from '../geometry/index.ts';

export interface FillOptions {
  /**
   * The distance (mm) between neighbouring lines that the fill aims for; each fill says how it keeps to it.
   */
  readonly spacing: number;
  /** The same seed gives the same fill. */
  readonly seed: number;
  /** The direction of straight lines (radians); each such fill has its own default. */
  readonly angle?: number;
  /** How far what is upright in the region is turned (radians), where its frame does not stand as it is looked at. */
  readonly turn?: number;
  /** Unevenly spaced lines, where the fill knows them. */
  readonly uneven?: boolean;
}

/** A line of mirror symmetry. */
export interface Axis {
  readonly at: Point;
  /** radians */
  readonly angle: number;
}

/**
 * One side of an area that lies along a band. Straight lines keep their angle to it, and turn on the lines that halve
 * its corners. In its own frame x runs along it from its beginning, and y square to it.
 */
export interface FieldSide {
  /** mm from where it begins, at the origin, to where it ends. */
  readonly length: number;
  /** Between which y (mm) it lies. */
  readonly from: number;
  readonly to: number;
  /**
   * The angle to x (radians) of the line that halves the corner where it ends; where it begins stands its mirror image.
   * Undefined where it goes round no corner.
   */
  readonly mitre: number | undefined;
  /** A path of its own frame, as it lies in the area. */
  readonly lay: (path: Path) => Path;
}

export interface FillContext {
  /** The sides of an area that lies along a band, each next to the one before it, and the first to the last. */
  readonly sides?: readonly FieldSide[];
  /**
   * Of an area beside stitching: all lines in it at whole multiples of a distance (mm) from what is stitched there.
   */
  readonly echoed?: (distance: number) => readonly Path[];
  /**
   * The line that the fill follows (a feather's spine, the middle of a band); found from the region if
   * absent.
   */
  readonly spine?: Path;
  /** The radius (mm) of the widest arc that is stitched beside the area, for arcs of its own kind. */
  readonly radius?: number;
  /** The region's own mirror line, so that the fill can be mirrored too; found if it is there and upright. */
  readonly axis?: Axis;
}

export interface FillResult {
  readonly paths: readonly Path[];
  /** Whether each part of the region is stitched in one go, without a break in the thread. */
  readonly continuous: boolean;
  /** What the user should know of it, a sentence each without a full stop: parts left empty, limits met. */
  readonly messages: readonly string[];
}

export interface Fill {
  readonly name: string;
  /** One line for help texts. */
  readonly about: string;
  /** Whether it is meant for open areas, or for bands such as channels. */
  readonly suits: 'area' | 'band';
  /** The needle's way, for a person who sews it: where it starts, how it goes on, where it runs over what is sewn. */
  readonly sewn: string;
  /** About how many elements it draws in a square as wide as the spacing. */
  readonly crowd: number;
  /** The finest spacing (mm) that anybody sews, where that is not the thread's own thickness. */
  readonly finest?: number;
  /** What a plan may say of it besides the spacing; anything else would change nothing. */
  readonly takes: readonly ('angle' | 'seed')[];
  /** The angle (radians) where none is asked for, of a fill that takes one. */
  readonly usualAngle?: number;
  readonly fill: (region: Region, options: FillOptions, context?: FillContext) => FillResult;
}

export const nothing = (...messages: readonly string[]): FillResult => ({
  paths: [],
  continuous: true,
  messages,
});

/**
 * A fill draws at most about this many elements (dots, pebbles, lines, plumes), so that a spacing typed in
 * the wrong unit gives a message and not an hour's wait.
 */
export const MOST_ELEMENTS = 60_000;

export const TOO_FINE = 'the spacing is too fine for this area';

/** Closer lines (mm) than a thread is thick, or no number at all, are no spacing. */
const LEAST_SPACING = 0.5;

/**
 * What comes of filling each part of a region by itself, and what is to be said of it: of parts that stay empty, and of
 * those that take more than one line.
 */
export const ofParts = (
  made: readonly (readonly Path[])[],
  place: 'area' | 'band',
  thing: string,
): FillResult => {
  const paths = made.flat();
  const empty = made.filter((part) => part.length === 0).length;
  if (paths.length === 0) return nothing(`the ${place} is too narrow for ${thing} at this spacing`);
  const continuous = paths.length === made.length - empty;
  const messages = [
    ...(empty > 0 ? [`${empty} of ${made.length} parts are too narrow for ${thing} at this spacing`] : []),
    ...(continuous ? [] : [`${paths.length} lines, because narrow places part the ${place}`]),
  ];
  return { paths, continuous, messages };
};

/**
 * The finest spacing (mm) at which a fill is made in some areas, and whether these are what limits it: with a finer one
 * there would be too many elements.
 */
export const finestSpacing = (
  { crowd, finest = LEAST_SPACING }: Pick<Fill, 'crowd' | 'finest'>,
  regions: readonly Region[],
): { readonly finest: number; readonly byArea: boolean } => {
  const area = regions.reduce((sum, region) => sum + regionArea(region), 0);
  const crowded = Math.sqrt((crowd * area) / MOST_ELEMENTS);
  return { finest: Math.max(finest, crowded), byArea: crowded > finest };
};

/** A fill that is asked only for areas that are there, at spacings that are some. */
export const checked = (fill: Fill): Fill => ({
  ...fill,
  fill: (region, options, context) => {
    if (!(options.spacing >= LEAST_SPACING && Number.isFinite(options.spacing)))
      return nothing(`the spacing of a fill must be at least ${LEAST_SPACING} mm`);
    if (isEmptyRegion(region)) return nothing('nothing to fill');
    const { finest, byArea } = finestSpacing(fill, [region]);
    if (options.spacing < finest)
      return nothing(byArea ? TOO_FINE : `the spacing is too fine for ${fill.name}`);
    return fill.fill(region, options, context);
  },
});
