/**
 * The commands by name. `--help` needs only what stands here; a command's own file, and all that it needs, is
 * loaded when the command is named.
 */

import type { Define } from './define.ts';

export interface CommandEntry {
  readonly name: string;
  /** One line, for the list of commands. */
  readonly summary: string;
  readonly load: () => Promise<Define>;
}

export const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'fit',
    summary: 'find what fits the layout, best first',
    load: async () => (await import('./commands/fit.ts')).defineFit,
  },
  {
    name: 'mockup',
    summary: 'print the design at true size, on sheets to tape together',
    load: async () => (await import('./commands/mockup.ts')).defineMockup,
  },
  {
    name: 'card',
    summary: 'print the marking card: where every mark goes, and how the template sits',
    load: async () => (await import('./commands/card.ts')).defineCard,
  },
  {
    name: 'audition',
    summary: 'print small copies with each fill, to choose from, or empty ones to draw in',
    load: async () => (await import('./commands/audition.ts')).defineAudition,
  },
  {
    name: 'class',
    summary: 'print what a class needs: sheets and a card for each student',
    load: async () => (await import('./commands/class.ts')).defineClass,
  },
  {
    name: 'draw',
    // Said here once more: the list of commands loads nothing else. A test holds it to output/writers.
    summary: 'draw the design as one picture: SVG, PDF, PNG or DXF',
    load: async () => (await import('./commands/draw.ts')).defineDraw,
  },
  {
    name: 'template',
    summary: 'check a template, and print its outline to lay the acrylic on',
    load: async () => (await import('./commands/template.ts')).defineTemplate,
  },
  {
    name: 'open',
    summary: 'open the page for the browser, served on this computer only',
    load: async () => (await import('./commands/open.ts')).defineOpen,
  },
];
