/** Everything that a fit decides, in the words of a plan's keys: so that a plan can say it, and give the same fit again. */

import type { CornerTreatment, SettingName } from '../plan/index.ts';
import { isClosed } from './run.ts';
import type { Ranked } from './search.ts';
import type { Direction, TemplateSide } from './shape.ts';
import type { Stop } from './stitching.ts';

export interface Choices {
  /** Undefined for strips and round frames, which have no corners. */
  readonly corners: CornerTreatment | undefined;
  /** A section's number, or an alignment line's name. */
  readonly from: number | string;
  readonly to: number | string;
  readonly setting: SettingName;
  /** Only with an alignment line. */
  readonly laid: 'square' | 'along' | undefined;
  /** Only with a flat. */
  readonly flat: number | undefined;
  readonly side: TemplateSide;
  readonly direction: Direction;
  /** One for each side, from the top clockwise; none for a round frame. */
  readonly repeats: readonly number[];
  /** Of a round frame. */
  readonly count: number | undefined;
}

export const choicesOf = ({ field, fit }: Pick<Ranked, 'field' | 'fit'>): Choices => {
  const { shape, setting } = fit.way;
  const last = shape.stitching.sections.length;
  const closes = field.runs.some(isClosed);
  const counts = fit.sides.map((s) => s.repeats);
  return {
    corners: field.corners === 'none' ? undefined : field.corners,
    from: placeName(shape.from),
    to: shape.to.section === last ? 'crown' : placeName(shape.to),
    setting: setting.kind,
    laid: setting.kind === 'alignment-line' ? setting.laid : undefined,
    flat: setting.kind === 'flat-on-guide' ? setting.flat.number : undefined,
    side: shape.side,
    direction: shape.direction,
    repeats: closes ? [] : counts,
    count: closes ? counts[0] : undefined,
  };
};

/** The search starts and ends swags at sections and at etched lines, and nowhere else. */
const placeName = (stop: Stop): number | string => {
  const name = stop.section ?? stop.line?.name;
  if (name === undefined) throw new Error(`A fit starts or ends at a place without a name: ${stop.label}`);
  return name;
};
