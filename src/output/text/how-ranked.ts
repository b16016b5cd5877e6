/** How fits are ranked, in a sentence: in the order of the weights by which the search ranks (swag/weights.ts). */

import { type Field, roomName } from '../../swag/index.ts';

export const howRanked = (field: Field): string => {
  const { around, corners } = field;
  const late =
    'then a plain setting (the template nearly level with the seam, heel first, crown on centre). Very small swags come late.';
  if (around.kind === 'motif')
    return `Best first: swags that fill the room up to the limit count most (without one, a frame from a fifth to half as wide as its motif’s radius), then swags that touch, six to eight of them, and are drapes, neither spikes nor ripples; ${late.replace(/ \(.*\)/, '')}`;
  const sides =
    corners === 'none' ? '' : ', are alike on all sides, have as many on opposite sides and turn the corners';
  return `Best first: swags that fill the ${roomName(field)} count most, then swags that touch${sides}${sides && ','} and are drapes, neither spikes nor ripples; ${late}`;
};
