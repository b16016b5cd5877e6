/** Colours of fabric and thread, and pictures to show. */

export const coloursWords = {
  title: 'Colours and pictures to show',
  lead: 'Your fabric and your thread, in the picture of the quilt and in pictures to show.',
  fabric: 'Fabric',
  middle: {
    border: 'The quilt in it',
    strip: undefined,
    frame: 'Motif',
    block: 'Block',
    parts: 'The quilt’s middle',
  },
  thread: 'Thread',
  none: 'Colours of the page',
  noneWhy: 'The picture has the colours of this page until you choose one.',

  whole: 'the whole quilt',
  shows: 'The picture shows',
  withMarks: 'With marks and measures',
  png: 'Picture (PNG)',
  pngWhy: 'for a message or a screen',
  svg: 'Drawing (SVG)',
  svgWhy: 'sharp at any size, in mm',
  making: 'the picture',
  failed: 'The picture could not be made.',
  done: ({ name, words }: { readonly name: string; readonly words: string }) =>
    `${name} is with your downloads: ${words}`,
};
