/** How fits are ranked, in a sentence: in the order of the weights by which the search ranks (swag/weights.ts). */

export const HOW_RANKED =
  'Best first: swags that fill the border count most, then swags that touch, are alike on all sides, have as many on opposite sides and turn the corners, and are drapes, neither spikes nor ripples; then a plain setting (the template nearly level with the seam, heel first, crown on centre). Very small swags come late.';

export const HOW_RINGS_ARE_RANKED =
  'Best first: swags that fill the room up to the limit count most (without one, a frame from a fifth to half as wide as its motif’s radius), then swags that touch, six to eight of them, and are drapes, neither spikes nor ripples; then a plain setting. Very small swags come late.';
