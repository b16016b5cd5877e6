/**
 * How a channel is stitched with the template that is at hand: which etched line to lay on the last stitching.
 *
 * The foot keeps the needle one clearance beyond the edge. So the edge itself, laid on the last stitching, gives
 * a channel one clearance wide, and a line etched e inside the edge gives e + clearance (common practice, no
 * source). Other widths need a spacer, or cannot be had with this foot.
 */

export type ChannelSetting =
  /** The edge itself lies on the last stitching. */
  | { readonly kind: 'edge' }
  /** The line etched `inside` mm within the edge lies on it. */
  | { readonly kind: 'line'; readonly inside: number }
  /** No line serves: the edge stands `beyond` mm before the last stitching, on the side of the new line. */
  | { readonly kind: 'spacer'; readonly beyond: number }
  /** Narrower than the clearance by `by` mm: the edge would have to lie back, over the last stitching. */
  | { readonly kind: 'too-narrow'; readonly by: number };

/** Widths nearer than this (mm) are stitched alike: less than the 1/64 in that anyone sets by eye. */
const SAME_WIDTH = 0.4;

/** The setting for a channel of `width` mm; `lines` are the template's etched distances inside the edge, mm. */
export const channelSetting = (
  width: number,
  clearance: number,
  lines: readonly number[],
): ChannelSetting => {
  const over = width - clearance;
  if (Math.abs(over) < SAME_WIDTH) return { kind: 'edge' };
  if (over < 0) return { kind: 'too-narrow', by: -over };
  const line = lines.find((e) => Math.abs(e - over) < SAME_WIDTH);
  return line === undefined ? { kind: 'spacer', beyond: over } : { kind: 'line', inside: line };
};
