/** One swag, large. */

export const swagWords = {
  title: 'One swag',
  lead: 'The swag by itself, with its template.',
  leadDecided:
    'This plan holds one decided design; “Show everything that fits”, under “What fits”, frees it.',
  leadFixed: 'The swag by itself, with its template. Pick a part of its edge to start or end there.',
  leadCorner:
    'Drag the crown along the mitre: the template follows, and snaps to the nearest fit of all sides. Pick a part of its edge to start or end there.',
  leadSide:
    'Drag the crown up and down, or an end in and out: the template follows, and snaps to the nearest fit. Pick a part of its edge to start or end there.',
  onThe: 'On the',
  corner: 'corner',
  side: ({ side }: { readonly side: string }) => `${side} side`,
  picture: ({ pose }: { readonly pose: string }) => `The swag and its template: ${pose}`,
  depthKnob: 'Depth of the swag',
  cornerKnob: 'Depth of the corner swag',
  spanKnob: 'Span of the swag',
  onThisSide: ({ repeats }: { readonly repeats: number }) => `${repeats} on this side`,
  roundMotif: ({ repeats }: { readonly repeats: number }) => `${repeats} round the motif`,
  snapsTo: ({ fit }: { readonly fit: string }) => `snaps to ${fit}`,
  snapsBack: 'snaps to where it was',
  cornerDepth:
    'A corner’s depth is measured square from the line that the swags start on, not along the mitre.',
  fixed: {
    side: 'A line or a flat of the template gives the tilt here: span and depth are fixed, and only the count can change.',
    corner: 'The corners have one depth only with the template set like this.',
    closed:
      'The swags close round the motif as tightly as they may: how many there are decides how the template tilts.',
  },
  narrower: 'Narrower, deeper',
  wider: 'Wider, flatter',
  moreRound: 'More swags, narrower',
  fewerRound: 'Fewer swags, wider',

  uses: <T>({ from, to }: { readonly from: T; readonly to: T }): readonly (string | T)[] => [
    'The swag uses the edge from ',
    from,
    ' to ',
    to,
    '.',
  ],
  start: 'start here',
  startAt: ({ section }: { readonly section: string }) => `start here: ${section}`,
  end: 'end here',
  endAt: ({ section }: { readonly section: string }) => `end here: ${section}`,
  anyPart: 'Any part of the edge',
  noneWithBoth: ({ from, to }: { readonly from: string; readonly to: string }) =>
    `Nothing fits that starts at ${from} and also ends at ${to}. Choose another start or end, or “Any part of the edge”.`,
  startAtHeel: 'the heel',
  startAtSection: ({ number }: { readonly number: number }) => `section ${number}`,
  endAtCrown: 'the crown end',
  endAtSection: ({ number }: { readonly number: number }) => `the end of section ${number}`,
  atLine: ({ name }: { readonly name: string }) => `line ${name}`,

  wishes: 'More wishes',
  wishesHint: 'The setting, inside or outside, and whether the heel or the crown end stands at the seam.',
  setting: {
    label: 'How the template is set',
    auto: 'any way',
    crown: 'crown on the centre line',
    line: 'by an etched line',
    flat: 'a flat on a guide line',
  },
  lies: {
    label: 'The template lies',
    auto: 'either side',
    inside: 'inside the swag',
    outside: 'outside the swag',
  },
  seam: { label: 'At the seam stands', auto: 'either end', heel: 'the heel', crown: 'the crown end' },
};
