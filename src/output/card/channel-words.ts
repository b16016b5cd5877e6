/** For each channel: which etched line of the template to lay on the last stitching, or what else to do. */

import { exactLength, type LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import {
  type ChannelSetting,
  channelSetting,
  type Design,
  kindsIn,
  ownCorner,
  rowsOf,
} from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

export const channelBlocks = (design: Design, plan: Plan): readonly CardBlock[] => {
  const { channels, foot, marks } = plan;
  const rows = rowsOf(design);
  const said = new Map<string, string[]>();
  for (const side of ['outward', 'inward'] as const) {
    const { fit } = side === 'outward' ? rows.at(-1)! : design;
    const corner = ownCorner(fit);
    const made = [...kindsIn(fit).map(({ way }) => way), ...(corner ? [corner] : [])];
    const called = corner ? ['sides', 'corners'] : ['kind 1', 'kind 2'];
    for (const [i, width] of channels[side].entries()) {
      const ways = made.map(({ shape }) => {
        const { template } = shape.stitching;
        const setting = channelSetting(width, foot.clearance, template.channelLines);
        return channelWords(setting, width, foot.clearance, marks.style);
      });
      const isOne = new Set(ways).size === 1;
      for (const [k, way] of (isOne ? ways.slice(0, 1) : ways).entries()) {
        const words = `${exactLength(width, marks.style)} wide: ${way}`;
        const name = `${isOne ? '' : `${called[k]}, `}${side} ${i + 1}`;
        said.set(words, [...(said.get(words) ?? []), name]);
      }
    }
  }
  // Channels of one width are stitched in one way, which is said once.
  const points = [...said].map(
    ([words, names]): CardBlock => ({ kind: 'point', text: `${names.join(' and ')}, ${words}` }),
  );
  if (points.length === 0) return [];
  return [
    { kind: 'text', text: INTRO },
    ...(rows.length > 1 ? [{ kind: 'text', text: OF_ROWS } as const] : []),
    ...points,
    ...(channels.inward.length > 0 ? [{ kind: 'text', text: INWARD } as const] : []),
  ];
};

/** Common practice, no source: the edge gives one clearance, a line etched e inside it gives e + clearance. */
const INTRO =
  'Widths are from one line of stitching to the next. Lay the template on the side away from the new line, ' +
  'and slide it along as you go: in a curve it follows only a little way at a time.';

/** Between two rows there is none. */
const OF_ROWS = 'Outward channels follow the last row, inward ones the first.';

/** Inward channels are stitched from the other side of the swag, where a lobed edge does not lie along them. */
const INWARD =
  'Where the template does not lie along an inward channel, go by the channel before, a little at a time.';

const channelWords = (
  setting: ChannelSetting,
  width: number,
  clearance: number,
  style: LengthStyle,
): string => {
  const length = (mm: number): string => exactLength(mm, style);
  const given = length(clearance) === length(width) ? '' : ` (that gives ${length(clearance)})`;
  switch (setting.kind) {
    case 'edge':
      // The foot is a circle round the needle: riding along a line it is as far from it everywhere.
      return given === ''
        ? 'ride the foot along the last stitching, or lay the edge itself on it.'
        : `lay the edge itself on the last stitching${given}.`;
    case 'line':
      return `lay the line etched ${length(setting.inside)} inside the edge on the last stitching (${length(setting.inside)} + ${length(clearance)}).`;
    case 'spacer':
      return `no etched line serves. Keep the edge ${length(setting.beyond)} beyond the last stitching with a spacer of that width, or mark a line there.`;
    case 'too-narrow':
      return `narrower than the foot's ${length(clearance)}: the edge would lie ${length(setting.by)} back over the last stitching. Mark the line and follow it by eye, or use a smaller foot.`;
    default:
      return setting satisfies never;
  }
};
