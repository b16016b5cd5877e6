/**
 * How each role looks, for one use, and a drawing in that look. Weight and dash tell lines apart in black and white;
 * colour comes second and only helps. Widths and dashes in mm, as they come out on paper.
 */

import {
  type AreaItem,
  type Drawing,
  type Item,
  LAYERS,
  type LayerId,
  type PathItem,
  type TextItem,
} from './drawing.ts';
import type { AreaRole, LineRole, WordRole } from './role.ts';

export interface Stroke {
  /** mm */
  readonly width: number;
  /** `#rrggbb` */
  readonly color: string;
  /** On and off lengths in mm; absent for a solid line. */
  readonly dash?: readonly number[];
}

/** What a use leaves out has no look there. */
export interface StyleSheet {
  readonly lines: Readonly<Partial<Record<LineRole, Stroke>>>;
  readonly areas: Readonly<Partial<Record<AreaRole, string>>>;
  readonly words: Readonly<Partial<Record<WordRole, string>>>;
}

/** A writer needs the look alone; the role stays known for legends. */
type Looks<I extends Item, Look> = Omit<I, 'role'> & Partial<Pick<I, 'role'>> & Look;

export type StyledPath = Looks<PathItem, { readonly stroke: Stroke }>;
export type StyledArea = Looks<AreaItem, { readonly color: string }>;
export type StyledText = Looks<TextItem, { readonly color: string }>;
export type StyledItem = StyledPath | StyledArea | StyledText;

/** A drawing as it looks in one use: what writers write and pages are planned for. */
export interface StyledDrawing {
  readonly title: string;
  /** What it is drawn on, `#rrggbb`; white where it is not told. */
  readonly ground?: string | undefined;
  readonly layers: Readonly<Record<LayerId, readonly StyledItem[]>>;
}

/** A drawing in the look of a sheet; items whose role the sheet leaves out are gone. */
export const styled = (drawing: Drawing, sheet: StyleSheet): StyledDrawing => ({
  title: drawing.title,
  layers: Object.fromEntries(
    LAYERS.map((id) => [
      id,
      drawing.layers[id].flatMap((item) => {
        const shown = styledItem(item, sheet);
        return shown ? [shown] : [];
      }),
    ]),
  ) as unknown as StyledDrawing['layers'],
});

const styledItem = (item: Item, { lines, areas, words }: StyleSheet): StyledItem | undefined => {
  switch (item.kind) {
    case 'path': {
      const stroke = lines[item.role];
      return stroke && { ...item, stroke };
    }
    case 'area': {
      const color = areas[item.role];
      return color === undefined ? undefined : { ...item, color };
    }
    case 'text': {
      const color = words[item.role];
      return color === undefined ? undefined : { ...item, color };
    }
    default:
      return item satisfies never;
  }
};
