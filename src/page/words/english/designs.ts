/** Designs that are kept by name. */

import { plural } from '../../../document/index.ts';

const taken = ({ count, file }: { readonly count: number; readonly file: string }): string =>
  `${plural(count, 'design')} of ${file} ${count === 1 ? 'is' : 'are'} under “Your designs” now.`;

export const designsWords = {
  title: 'Your designs',
  lead: 'Kept in this browser, each with the templates that it uses. Tick two to four to see them side by side.',
  kept: ({ title, asked }: { readonly title: string; readonly asked: string }) =>
    `The design “${title}” is kept in this browser, under “Your designs”.${title === asked ? '' : ` There is a “${asked}” already.`}`,
  rename: 'Give it another name',
  full: ({ most }: { readonly most: number }) =>
    `This browser keeps ${most} designs of yours. Save them as a file, and throw some away.`,
  refused:
    'This browser has no room for another design, or is set to keep nothing. “Save plan” puts it with your downloads.',
  noneYet: 'What is open does not work out yet, and is no design to keep.',
  unread: ({ file }: { readonly file: string }) => `${file} cannot be read.`,
  unreadHere: ({ count }: { readonly count: number }) =>
    `${plural(count, 'design')} that this browser keeps cannot be read by this page: damaged, or of a newer page. What is there stays as it is.`,
  taken,
  takenSome: ({
    count,
    file,
    bad,
  }: {
    readonly count: number;
    readonly file: string;
    readonly bad: number;
  }) => `${taken({ count, file })} ${plural(bad, 'entry', 'entries')} could not be read.`,
  saveAll: 'Save all designs in one file',
  saved: ({ file }: { readonly file: string }) =>
    `${file} is with your downloads. “Open …” brings its designs to another device.`,

  name: ({ title }: { readonly title: string }) => `What the design ${title} is called`,
  pin: 'side by side',
  pinOf: ({ title }: { readonly title: string }) => `Side by side: ${title}`,
  open: 'Open',
  openOf: ({ title }: { readonly title: string }) => `Open: ${title}`,
  copy: 'Copy',
  copyOf: ({ title }: { readonly title: string }) => `Copy: ${title}`,
  throwAway: 'Throw away',
  throwAwayOf: ({ title }: { readonly title: string }) => `Throw away: ${title}`,
  takeBack: ({ title }: { readonly title: string }) => `Take “${title}” back`,

  beside: 'Side by side, at one scale',
  takeThis: 'Take this one',
};
