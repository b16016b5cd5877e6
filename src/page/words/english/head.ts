/** The head of the page, what is told while she works, and its foot. */

import { plural } from '../../../document/index.ts';

export const headWords = {
  skip: 'To your quilt’s figures',
  name: 'What this plan is called',
  plan: 'The plan',
  undo: 'Undo',
  redo: 'Redo',
  more: 'More',
  newPlan: 'New',
  open: 'Open …',
  keepDesign: 'Keep design',
  copyLink: 'Copy link',
  savePage: 'Save page',
  units: { label: 'Figures in', in: 'inches', cm: 'centimetres', mm: 'millimetres' },

  messages: 'Messages',
  workingOut: ({ what }: { readonly what: readonly string[] }) => `Working out ${what.join(' and ')} …`,
  stop: 'Stop',
  doesNotWorkOut: ({ problem }: { readonly problem: string }) => `This does not work out: ${problem}`,
  comesTo: ({ design, ways }: { readonly design: readonly string[]; readonly ways: number }) =>
    `${design.join(', ')}. ${plural(ways, 'way fits', 'ways fit')}.`,
};

export const footWords = {
  stays: 'Nothing leaves this browser.',
  staysMore:
    'Plans, templates and pages are made here, on your own device; nothing is sent anywhere, and there is nobody to send it to.',
  link: 'A link that you copy holds the plan in the part of the address that browsers keep to themselves.',
  care: 'A needle that strikes a template shatters. Use only a foot made for ruler work and a template of the thickness that suits it; your machine’s and your foot’s own manuals have the last word. Keep fingers flat and away from the needle, stop with the needle down before you move a hand, wear eye protection, and test on a scrap.',
};
