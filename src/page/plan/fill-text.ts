/** Fills as a plan writes them: which there are, what is said of each, and the changes that say something else. */

import { fillKind, type KeyPath, type PlanSource, plainValue, textAt, type Written } from './plan-text.ts';

/** What a plan may say of a fill. */
export type FigureKey = 'spacing' | 'angle' | 'seed';

export interface WrittenFill {
  /** Where it stands: channels that have the same fill are one, and each has its place. */
  readonly at: readonly KeyPath[];
  readonly kind: string;
  readonly place: FillPlace;
}

export type FillPlace = 'swag' | 'background' | 'corner' | 'between' | 'channels';

const ALONE: readonly FillPlace[] = ['swag', 'background', 'corner', 'between'];

/** Of the open part. */
export const writtenFills = (from: PlanSource): readonly WrittenFill[] => {
  const alone = ALONE.flatMap((place): readonly WrittenFill[] => {
    const at = ['fills', place];
    const kind = fillKind(from, at);
    return kind === undefined ? [] : [{ at: [at], kind, place }];
  });
  const byKind = new Map<string, readonly KeyPath[]>();
  const found = (at: KeyPath): boolean => {
    const kind = fillKind(from, at);
    if (kind !== undefined) byKind.set(kind, [...(byKind.get(kind) ?? []), at]);
    return kind !== undefined;
  };
  // One fill for all channels may stand without a list.
  if (!found(CHANNELS)) for (let i = 0; found([...CHANNELS, i]); i++);
  return [...alone, ...[...byKind].map(([kind, at]) => ({ at, kind, place: 'channels' as const }))];
};

const CHANNELS: KeyPath = ['fills', 'channels'];

/** What is said of it, as it is written: of several channels what is said of the first. */
export const figureAt = (from: PlanSource, { at }: WrittenFill, key: FigureKey): string | undefined =>
  textAt(from, [...at[0]!, key]);

/** A fill that is only named gets a group for what else is said of it. */
export const figureChanges = (
  from: PlanSource,
  { at, kind }: WrittenFill,
  key: FigureKey,
  value: string | number | undefined,
): readonly (readonly [KeyPath, Written])[] =>
  at.flatMap((path): readonly (readonly [KeyPath, Written])[] => {
    if (textAt(from, path) === undefined) return [[[...path, key], value]];
    return value === undefined ? [] : [[path, { kind, [key]: plainValue(value) }]];
  });
