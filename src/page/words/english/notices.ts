/** What is said at the top of the page, of what was done and what could not be. */

export const noticeWords = {
  downloaded: ({ name, words }: { readonly name: string; readonly words: string }) =>
    `${name} is with your downloads: ${words}`,
};
