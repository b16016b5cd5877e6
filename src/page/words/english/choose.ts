/** The shelf of templates, and what fits with them. */

import { plural } from '../../../document/index.ts';

export const templatesWords = {
  title: 'Your templates',
  lead: 'Tick the ones that you own. The three here are invented, to try things out. An edge runs from its heel to its crown end, in one section or more. Yours can be added from a scan or a photograph, a drawing (SVG, at its real size), a template file, or points that you measure.',
  add: 'Add your template …',
  photograph: 'Photograph it …',
  points: 'Type its points …',
  saveAll: 'Save all of mine in one file',
};

export const fitsWords = {
  title: 'What fits',
  workingOut: 'Working it out …',
  none: 'Nothing fits these figures yet. Below is what fitted the figures before.',
  before: 'Below is what fitted the figures before.',
  ways: ({ count, best }: { readonly count: number; readonly best: string }) =>
    `${plural(count, 'way')}, the best first: ${best}`,
  /** What makes a fit good, by what the swags lie round. */
  best: {
    quilt: 'filling the border, touching, alike on all sides, plain to set.',
    block: 'filling the room, touching, alike on all sides, plain to set.',
    motif: 'filling the room, touching, six to eight, neither flat nor steep.',
    nothing: 'filling the strip, touching, plain to set.',
  },
  nearest: ({ best }: { readonly best: string }) => `nearest to what you would like; then ${best}`,
  showAll: 'Show everything that fits',
  captions:
    'Each says which part of the edge it takes, such as heel to crown end, the setting, and whether the template lies inside or outside the swags.',
  choose: 'Choose how the swags are made',
  card: ({ number, caption }: { readonly number: number; readonly caption: readonly string[] }) =>
    `${number}: ${caption.join('; ')}`,
  looksLike: ({ number }: { readonly number: number }) => `What you have taken looks like number ${number}.`,
  furtherDown: 'The one that you have taken is further down.',
  more: ({ count }: { readonly count: number }) => `Show ${count} more`,
  shown: ({ count, all }: { readonly count: number; readonly all: number }) =>
    `${count} of ${all} are shown.`,
};
