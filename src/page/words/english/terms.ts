/** For whoever comes here first: what this is, and words of the trade. */

export const introWords = {
  label: 'What this is',
  what: 'swagwright fits swags to your quilt: it works out how the edge of a template makes a row of them that fills the border and turns its corners, and prints it at true size.',
  example: 'The figures here are an example: type yours over them.',
  hers: 'The picture follows every figure that you type.',
  putAway: 'Put this away',
};

/** Each in one plain sentence, and how it is said, as a regular expression. */
export const termsWords = {
  heel: {
    says: 'The heel is the end of the template’s edge where a swag starts, at the seam. Where the words say crown first, the edge is turned round: the crown end starts the swag, and the heel is at its crown.',
    said: 'heel',
  },
  crown: {
    says: 'The crown end is the other end of the edge: there half a swag is done, at its crown on the centre line. Where the words say crown first, it stands at the start mark.',
    said: 'crown end',
  },
  section: {
    says: 'A section is the stretch of edge from one notch or corner to the next; a swag may use all of them or some.',
    said: 'sections?',
  },
  setting: {
    says: 'The setting is what you lay the template by, the same on both halves: its crown end on the centre line, an etched line along a seam, or a flat on a guide line.',
    said: 'crown on centre|line [^,;]+ (?:along|square to) (?:seam|block|ray)|flat \\d+ on a guide line|settings?',
  },
  inside: {
    says: 'Inside, the template lies within the swag, between stitching and seam; outside, it lies beyond the stitching.',
    said: 'inside|outside',
  },
};
