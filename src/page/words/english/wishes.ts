/** What she would like of the swags. */

export const wishesWords = {
  title: 'What you would like',
  lead: 'Leave open what you do not mind. “About” puts the nearest first; the others keep only what meets them.',
  span: 'Width of a swag',
  depth: 'Depth of a swag',
  useOfBorder: 'Use of the border',
  useOfRoom: 'Use of the room',
  how: {
    any: 'whatever fits',
    about: 'about',
    exactly: 'exactly',
    least: 'at least',
    most: 'at most',
    between: 'between',
  },
  howOf: ({ wish }: { readonly wish: string }) => `${wish}: how it is meant`,
  fromOf: ({ wish }: { readonly wish: string }) => `${wish}: from`,
  toOf: ({ wish }: { readonly wish: string }) => `${wish}: to`,
  and: 'and',
  sliderOf: ({ label }: { readonly label: string }) => `${label}, slider`,
  atSlider: ({
    how,
    figure,
    unit,
  }: {
    readonly how: string;
    readonly figure: string;
    readonly unit: string;
  }) => `${how} ${figure} ${unit}`,

  repeats: 'Swags on a side',
  counts: {
    any: 'as many as fit best',
    odd: 'an odd number',
    even: 'an even number',
    exactly: 'just',
    about: 'about',
    least: 'at least',
    most: 'at most',
    between: 'between',
    sides: 'as the plan says, by sides',
  },

  gap: 'Neighbours',
  gaps: { any: 'whatever fits', touching: 'touching', near: 'as near as they may stand' },
  apart: ({ gap }: { readonly gap: string }) => `${gap} apart`,
};
