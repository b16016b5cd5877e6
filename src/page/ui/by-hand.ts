/**
 * What she says of a template by hand, whether it comes from a picture of it or from points: its breaks, its thickness,
 * the lines etched in it. One for each place where that is done, so that the same fields serve both.
 */

import type { ReadonlySignal, Signal } from '@preact/signals';
import { readLength, type Units } from '../../length/index.ts';
import type { SaidBreak, TraceInput } from '../engine/messages.ts';
import { typedIn } from '../plan/typed-in.ts';
import { unitsNow } from './fields.tsx';
import type { Place } from './pointer.ts';

/** An etched line by a place that she tapped on it, or by its distance as she typed it. */
export interface EtchedLine {
  readonly id: number;
  /** Of a line across; those along the edge have none. */
  readonly name: string;
  readonly text: string;
  readonly place: Place | undefined;
}

/** Plain data, so that it can be kept. */
export interface ByHand {
  /** Undefined where she has said nothing of them. */
  readonly breaks: readonly SaidBreak[] | undefined;
  readonly thickness: string;
  readonly across: readonly EtchedLine[];
  readonly along: readonly EtchedLine[];
}

export const NOTHING_BY_HAND: ByHand = { breaks: undefined, thickness: '', across: [], along: [] };

/** The same on a page whose figures are in other units by now. */
export const byHandIn = ({ breaks, thickness, across, along }: ByHand, then: Units, now: Units): ByHand => {
  const lines = (list: readonly EtchedLine[]): readonly EtchedLine[] =>
    list.map((line) => ({ ...line, text: typedIn(line.text, then, now) }));
  return { breaks, thickness: typedIn(thickness, then, now), across: lines(across), along: lines(along) };
};

/** What a tap is for; a place on an etched line. */
interface LineTool {
  readonly kind: 'across' | 'along';
  readonly id: number;
}

export interface Hand {
  readonly said: ReadonlySignal<ByHand | undefined>;
  /** `about` gathers what belongs together, such as dragging one break, into one step. */
  readonly say: (changes: Partial<ByHand>, about?: string) => void;
  /** For screen readers: what the last step came to. */
  readonly told: Signal<string>;
  readonly tool: Signal<LineTool | undefined>;
  /** Which of the breaks she is at in the list: the picture shows it. */
  readonly lit: Signal<number | undefined>;
}

/** A tap on an etched line; whether one was waited for. */
export const tapLine = ({ said, say, tool }: Hand, at: Place): boolean => {
  const [now, wanted] = [said.peek(), tool.peek()];
  if (!now || !wanted) return false;
  const { kind, id } = wanted;
  say({ [kind]: now[kind].map((line) => (line.id === id ? { ...line, text: '', place: at } : line)) });
  tool.value = undefined;
  return true;
};

/** A length that she types, mm; undefined where nothing is typed, `wrong` where it cannot be read. */
export const lengthSaid = (text: string): number | undefined | 'wrong' => {
  if (text.trim() === '') return undefined;
  const read = readLength(text, unitsNow());
  return read.ok ? read.mm : 'wrong';
};

/** What cannot be read yet leaves a line out. */
const etched = ({ text, place }: EtchedLine): number | Place | undefined => {
  if (place) return place;
  const mm = lengthSaid(text);
  return mm === 'wrong' ? undefined : mm;
};

/** Those that the worker is told of, in the order of its answer. */
export const saidLines = (lines: readonly EtchedLine[]): readonly EtchedLine[] =>
  lines.filter((line) => etched(line) !== undefined);

/** As a worker is told of it. */
export const forWorker = ({
  breaks,
  thickness,
  across,
  along,
}: ByHand): Pick<TraceInput, 'breaks' | 'thickness' | 'across' | 'along'> => {
  const thick = lengthSaid(thickness);
  return {
    breaks,
    thickness: thick === 'wrong' ? undefined : thick,
    across: saidLines(across).map((line) => ({ name: line.name, at: etched(line)! })),
    along: saidLines(along).map((line) => etched(line)!),
  };
};

/** Whether a figure of it cannot be read. */
export const isHandUnread = ({ thickness, across, along }: ByHand): boolean =>
  [thickness, ...[...across, ...along].map((line) => line.text)].some((text) => lengthSaid(text) === 'wrong');
