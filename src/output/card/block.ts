/** What a section of the card is made of: sentences, points, places of the template and tables. */

import type { Column } from '../text/index.ts';

export type CardBlock = { readonly kind: 'text' | 'point'; readonly text: string } | CardPlace | CardTable;

/** The end of the template at the start mark, and the one at the crown; the guide line; the needle; an etched line. */
export type PlaceId = 'near' | 'far' | 'guide' | 'needle' | `line ${string}`;

/** Where a place of the template lies: a figure has the measures beside it, all else the words. */
export interface CardPlace {
  readonly kind: 'place';
  readonly id: PlaceId;
  readonly name: string;
  /** Along and up. */
  readonly measures: readonly string[];
  readonly text: string;
}

export interface CardTable {
  readonly kind: 'table';
  readonly title?: string;
  /** Of one with a title: what the rest is called by where it goes on elsewhere. */
  readonly name?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Of one that needs the page's whole width. */
  readonly isWide?: boolean;
}
