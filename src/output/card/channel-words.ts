/** For each channel: which etched line of the template to lay on the last stitching, or what else to do. */

import { exactLength, type LengthStyle } from '../../length/index.ts';
import type { Plan } from '../../plan/index.ts';
import { type ChannelSetting, channelSetting, type Design, kindsIn, rowsOf } from '../../swag/index.ts';
import type { CardBlock } from './block.ts';

export const channelBlocks = (design: Design, plan: Plan): readonly CardBlock[] => {
  const { channels, foot, marks } = plan;
  const rows = rowsOf(design);
  const points = (['outward', 'inward'] as const).flatMap((side) =>
    channels[side].flatMap((width, i): readonly CardBlock[] => {
      const row = side === 'outward' ? rows.at(-1)! : design;
      const words = kindsIn(row.fit).map((kind) => {
        const { template } = kind.way.shape.stitching;
        const setting = channelSetting(width, foot.clearance, template.channelLines);
        return channelWords(setting, foot.clearance, marks.style);
      });
      const name = `${side} ${i + 1}, ${exactLength(width, marks.style)} wide`;
      return new Set(words).size === 1
        ? [{ kind: 'point', text: `${name}: ${words[0]}` }]
        : words.map((text, k) => ({ kind: 'point', text: `kind ${k + 1}, ${name}: ${text}` }));
    }),
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
  'and slide it along as you go: where the stitching curves, the edge follows it only a little way at a time.';

/** Between two rows there is none. */
const OF_ROWS = 'Outward channels follow the last row, inward ones the first.';

/** Inward channels are stitched from the other side of the swag, where a lobed edge does not lie along them. */
const INWARD =
  'Inward channels curve the other way round: where the template does not lie along them, stitch them by the ' +
  'channel before, a little at a time.';

const channelWords = (setting: ChannelSetting, clearance: number, style: LengthStyle): string => {
  const length = (mm: number): string => exactLength(mm, style);
  switch (setting.kind) {
    case 'edge':
      return `lay the edge itself on the last stitching (that gives ${length(clearance)}).`;
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
