/**
 * A picture that does not know where it will be shown: named layers of paths, areas and texts, in mm at true
 * size, y up, each with the role that it plays. Pages, screens and files are made from it by others, who ask a
 * style sheet (style.ts) how each role looks there.
 */

import type { Path, Point } from '../geometry/index.ts';
import type { AreaRole, LineRole, WordRole } from './role.ts';

/** The layers' stable ids, in the order in which they are painted. */
export const LAYERS = ['fill', 'way', 'border', 'channel', 'template', 'stitch', 'marks', 'notes'] as const;
export type LayerId = (typeof LAYERS)[number];

/** Facts about an item for programs that read the SVG, such as `{ repeat: 'top 1', half: 'first' }`. */
export type Facts = Readonly<Record<string, string>>;

export interface PathItem {
  readonly kind: 'path';
  readonly path: Path;
  readonly role: LineRole;
  readonly facts?: Facts;
}

/** A filled area: closed paths, even-odd. */
export interface AreaItem {
  readonly kind: 'area';
  readonly loops: readonly Path[];
  readonly role: AreaRole;
  readonly facts?: Facts;
}

export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  /** The anchor on the text's base line. */
  readonly at: Point;
  /** The height of a line of type, mm (the font size). */
  readonly size: number;
  readonly align: 'start' | 'middle' | 'end';
  /** Radians, counterclockwise. */
  readonly angle: number;
  readonly role: WordRole;
  readonly bold?: boolean;
}

export type Item = PathItem | AreaItem | TextItem;

export interface Drawing {
  readonly title: string;
  readonly layers: Readonly<Record<LayerId, readonly Item[]>>;
}
