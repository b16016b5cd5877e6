/** What fills the screen, and a swag at its true size on it. */

export const screenWords = {
  fill: 'Fill the screen',
  close: 'Close',
};

export const glassWords = {
  howLarge: 'How large is your screen?',
  title: 'True size',
  layCard:
    'Lay a bank card on the glass, its left edge and its top on the drawn card’s. Move the slider until the right edges meet too. Every bank card is 85.60 mm wide (ISO/IEC 7810, ID-1).',
  width: 'Width of the drawn card',
  narrower: 'A hair narrower',
  wider: 'A hair wider',
  matches: 'It matches my card',
  card: 'The outline of a bank card',

  square: 'Check square, 2 in each way',
  squareLabel: '2 in · 50.8 mm',
  checkSquare: 'Check the square with a ruler first: 2 in (50.8 mm) each way. Do not pinch to zoom.',
  swag: ({ pose, template }: { readonly pose: string; readonly template: string }) =>
    `${pose}, ${template}, as large as on the quilt. Where it is wider than the screen, slide it along.`,
  squareWrong: 'The square is not right',
  picture: 'The swag at true size',
  pictureOf: ({ pose }: { readonly pose: string }) => `The swag at true size: ${pose}`,
};
