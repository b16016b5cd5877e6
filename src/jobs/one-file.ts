/** The page as one file, with a plan in it that it opens with. */

/** What the build calls it. */
export const ONE_FILE = 'swagwright.html';

/** How the page finds the plan in it, and, served by the command, beside it. */
export const OPENED_FILE = 'opened.json';

const PLACE = /(<script type="application\/json" data-file="opened\.json">)[^<]*(<\/script>)/;

/** `page` is the one file's text, `opened` a plan as the page takes it, in JSON. Throws where the text is another's. */
export const withOpened = (page: string, opened: string): string => {
  if (!PLACE.test(page)) throw new Error('this is not the page as one file');
  // Within a script no tag may begin; in JSON the sign is a text's own, which may be written so.
  const written = opened.replaceAll('<', '\\u003c');
  return page.replace(PLACE, (_, before: string, after: string) => `${before}${written}${after}`);
};
