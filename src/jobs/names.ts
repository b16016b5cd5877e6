/** What a file that a job makes is called when nobody says: after its plan or template, its part, and what it is. */

import { fileWord } from '../document/index.ts';
import type { Part } from './part.ts';

/** What a file is, as its name tells. */
export type FileKind =
  | 'mockup'
  | 'clean'
  | 'pounce'
  | 'stencil'
  | 'projector'
  | 'colours'
  | 'card'
  | 'audition'
  | 'frames'
  | 'choices'
  | 'outline'
  | 'edited'
  | 'solid'
  | 'gallery'
  | 'capture-sheet'
  | 'class'
  | `fit-${number}`;

export interface Naming {
  /** What the plan or the template is called; undefined for what is of neither. */
  readonly called?: string;
  /** Which part of the plan, where it has several. */
  readonly part?: Part['name'];
  /** Undefined for the design itself, which its ending tells. */
  readonly kind?: FileKind;
  /** `pdf` unless told. */
  readonly ending?: string;
}

/** `raffle` and `mockup` give `raffle-mockup.pdf`. */
export const proposedName = ({ called, part, kind, ending = 'pdf' }: Naming): string => {
  // A name that begins with a dash would be taken for an option by the next command.
  const first = called === undefined ? undefined : called.replace(/^-+/, '') || 'swags';
  const words = [first, part === undefined ? undefined : calledAfter(part), kind];
  return `${words.filter((word) => word !== undefined).join('-')}.${ending}`;
};

/** What files are called after a title or a part's name. */
export const calledAfter = (title: string): string => fileWord(title) || 'border';
