/** What is said at the top of the page, of what was done and what could not be. */

import { plural, series } from '../../../document/index.ts';

const quoted = (titles: readonly string[]): string => series(titles.map((title) => `“${title}”`));

export const noticeWords = {
  dismiss: 'Dismiss',
  stopped: 'Stopped. The picture shows what was worked out before.',
  tooLong: 'This took too long and was stopped.',
  noStart:
    'A part of the page could not be loaded; a newer page may have taken its place. Reload the page: your work is kept. If that does not help, try another browser.',
  noFills: 'The fills could not be made.',
  downloaded: ({ name, words }: { readonly name: string; readonly words: string }) =>
    `${name} is with your downloads: ${words}`,

  plan: 'your plan',
  savePlan: 'Save plan',
  templates: 'your templates',
  noRoom: ({ what, button }: { readonly what: string; readonly button: string }) =>
    `This browser has no room for ${what}, or is set to keep nothing. What you change is here until you close this window: “${button}” puts it with your downloads.`,
  takenOff: ({ titles }: { readonly titles: readonly string[] }) =>
    `${quoted(titles)} ${titles.length > 1 ? 'were' : 'was'} taken off the shelf in another window, and so out of this plan. Undo brings it back.`,
  doubled: ({ titles }: { readonly titles: readonly string[] }) =>
    `Two windows changed a template at once, or each added one of the same name. Both are on the shelf: the second is ${quoted(titles)}.`,
  planUnread:
    'A plan that this browser kept cannot be read by this page: it is damaged, or of a newer page. It is put aside as it is; a plan or a page that you saved brings its figures back.',
  shelfUnread:
    'The shelf of your templates that this browser kept cannot be read. It is put aside, and the shelf begins anew; a file that you saved brings its templates back.',

  linkCopied: 'The link is copied. It holds the whole plan; whoever opens it needs nothing else.',
  linkNotCopied:
    'The browser does not let the page copy. The link stands in the address line: copy it from there.',
  linkUnread: 'The link holds no plan that can be read. Your own plan is as it was.',
  pageInMany: ({ file }: { readonly file: string }) =>
    `Here the page is many files, and browsers let it read none of them. Open ${file}, which lies beside it, and save the page from there.`,
  pageUnread:
    'The page could not be read again where it came from. Save the plan instead, or open the page anew.',
  pageSaved: ({ name }: { readonly name: string }) =>
    `${name} is with your downloads: this page with the plan in it, as one file. It opens on a tablet, a telephone or another computer, without a connection; send it or carry it there.`,
  designsNotInIt: 'Your designs are not in it: “Save all designs in one file” takes those along.',
  openedUnread: 'The plan that the page was opened with could not be read. Your own plan is as it was.',
  theLink: 'the link',
  theFile: 'the file',
  notInIt: 'What cannot be read in a field is not in it: the figure before is.',
  planSaved: ({ name }: { readonly name: string }) =>
    `${name} is with your downloads. “Open …” brings it back, here or on another computer.`,
  planTooLong: ({ from }: { readonly from: string }) =>
    `The plan in ${from} is too long for this page, and cannot be used. Your own plan is as it was.`,
  planUnusable: ({ from }: { readonly from: string }) =>
    `The plan in ${from} cannot be used. Your own plan is as it was.`,
  planOpen: ({ title }: { readonly title: string }) =>
    `The plan “${title}” is open. Undo brings back the one before.`,
  newPlan: ({ title }: { readonly title: string }) =>
    `A new plan, “${title}”, with figures to type yours over. Undo brings back the one before.`,
};

/** What becomes of the files that she opens. */
export const filesWords = {
  pdf: ({ file }: { readonly file: string }) => `${file} is a PDF. Save its page as a picture (JPEG or PNG).`,
  tooLarge: ({ file }: { readonly file: string }) => `${file} is too large to be a plan or a template.`,
  drawingTooLarge: ({ file }: { readonly file: string }) =>
    `${file} is too large to be the drawing of a template.`,
  stray: ({ file }: { readonly file: string }) => `${file} is no plan, no template and no file of templates.`,
  unusable: ({ file }: { readonly file: string }) => `${file} cannot be used as a template.`,
  madeOfDrawing: (of: {
    readonly title: string;
    readonly name: string;
    readonly note: string;
    readonly words: string;
  }) =>
    `The template “${of.title}” is made, ticked, and with your downloads as ${of.name}.${of.note} ${of.words}`,
  onShelf: ({ title, note }: { readonly title: string; readonly note: string }) =>
    `The template “${title}” is on the shelf, and ticked.${note}`,
  otherwiseCalled: ({ asked, title }: { readonly asked: string; readonly title: string }) =>
    `There is a “${asked}” already: this one is called “${title}”.`,
  full: ({ most }: { readonly most: number }) =>
    `The shelf holds ${most} templates of yours. Save one and remove it.`,
  shelfSaved: ({ file }: { readonly file: string }) =>
    `${file} is with your downloads. “Open …” puts its templates on the shelf of another device.`,

  entry: ({ number }: { readonly number: number }) => `number ${number}`,
  noTemplate: 'This is no template.',
  templateTooLarge: 'This is too large for a template.',
  empty: ({ file }: { readonly file: string }) => `${file} holds no template.`,
  allThere: ({ file }: { readonly file: string }) => `All templates of ${file} are on the shelf already.`,
  added: (of: { readonly file: string; readonly titles: readonly string[]; readonly notes: string }) =>
    `${quoted(of.titles)} of ${of.file} ${of.titles.length > 1 ? 'are' : 'is'} on the shelf, and ticked.${of.notes}`,
  there: ({ file, count }: { readonly file: string; readonly count: number }) =>
    `${plural(count, 'template')} of ${file} ${count > 1 ? 'are' : 'is'} on the shelf already.`,
  bad: ({ file, count }: { readonly file: string; readonly count: number }) =>
    `${plural(count, 'template')} of ${file} could not be put on the shelf.`,
  beyond: ({ count }: { readonly count: number }) =>
    `${plural(count, 'more was', 'more were')} not looked at.`,
};
