/** What is worked out while she waits, named after “Working out …”. */

export const workWords = {
  fits: 'the fits',
  fills: 'the fills',
  marks: 'the marks',
  plan: 'the plan',
  template: 'the template',
  picture: 'the picture',
  outline: 'the outline',
  fonts: 'the fonts',
  pages: 'the pages',
  screen: 'the screen',
  table: 'the table',
  class: 'the class',
  designs: 'your designs',
  page: 'the page',
  link: 'the link',
  file: 'the file',
};
