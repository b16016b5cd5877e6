/** What is said of pages that are printed without being saved. */

/** Where a file goes, and what it holds. */
interface Went {
  readonly name: string;
  readonly words: string;
}

const TRUE_SIZE = 'Choose “actual size” or 100 % there, and measure the check square of what is at true size';

const bare = (words: string): string => words.replace(/\.$/, '');

export const paperWords = {
  print: 'Print',
  printOf: ({ what }: { readonly what: string }) => `Print ${what}`,
  lead: 'Each button puts a file with your downloads; “Print” beside it saves nothing, and asks your printer.',
  frame: 'What is being printed',
  inDialog: ({ name, words }: Went) => `The print dialog has ${name}: ${bare(words)}. ${TRUE_SIZE}`,
  inWindow: ({ name, words }: Went) =>
    `${name} is in a window of its own, which can print it: ${bare(words)}. ${TRUE_SIZE}`,
  inDownloads: ({ name, words }: Went) =>
    `This browser prints nothing from here. ${name} is with your downloads, to open and print at 100 %: ${bare(words)}`,
};
