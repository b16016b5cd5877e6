/** What a section of the card is made of: sentences, points and tables. */

import type { Column } from '../text/index.ts';

export type CardBlock = { readonly kind: 'text' | 'point'; readonly text: string } | CardTable;

export interface CardTable {
  readonly kind: 'table';
  readonly title?: string;
  /** Of one with a title: what the rest is called by where it goes on elsewhere. */
  readonly name?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}
