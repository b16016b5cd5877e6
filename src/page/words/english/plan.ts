/** What is wrong with a figure, said of its field. What the readers of lengths and plans say stands within. */

import { capital } from '../../../document/index.ts';

interface Which {
  readonly which: string;
}

export const planWords = {
  /** What a plan is called until she says: without what YAML knows as a sign. */
  title: 'My border',
  /** Fields as sentences name them. */
  fields: {
    side: ({ which }: Which) => `${which} side`,
    sides: 'length of the sides',
    width: ({ which }: Which) => `${which} width`,
    stripLength: 'length of the strip',
    stripEnds: 'distance from the ends',
    motif: 'width of the motif',
    block: 'side of the block',
    ofBlock: ({ which }: Which) => `${which} of the block`,
    fromMiddle: 'distance from the middle',
    limit: 'greatest finished size',
    seams: 'distance from both seams',
    seam: ({ which }: Which) => `distance from the ${which} seam`,
    foot: 'foot clearance',
    right: 'distance to the right of the middle',
    up: 'distance up from the middle',
    span: 'width of a swag',
    depth: 'depth of a swag',
    use: 'use of the border',
    repeats: 'number of swags on a side',
    points: 'choice of how channels go round points',
    channel: 'width of a channel',
    ofFill: ({ which }: Which) => `${which} of a fill`,
  },
  zero: ({ name, such }: { readonly name: string; readonly such: string }) =>
    `The ${name} cannot be 0. Type a length, ${such}.`,
  negative: ({ name, such }: { readonly name: string; readonly such: string }) =>
    `The ${name} cannot be less than 0. Type a length, ${such}.`,
  empty: ({ name, such }: { readonly name: string; readonly such: string }) =>
    `The ${name} is empty. Type a length, ${such}.`,
  unread: (of: {
    readonly name: string;
    readonly found: string;
    readonly why: string;
    readonly such: string;
  }) => `${capital(of.found)} cannot be read as the ${of.name}: ${of.why}. Type a length, ${of.such}.`,
  beyond: ({
    name,
    found,
    expected,
  }: {
    readonly name: string;
    readonly found: string;
    readonly expected: string;
  }) => `The ${name} cannot be ${found}: it must be ${expected}.`,
  of: ({ name, why }: { readonly name: string; readonly why: string }) => `The ${name}: ${why}.`,
  limitOff: (of: { readonly found: string; readonly expected: string; readonly why: string }) =>
    `“Finished, at most” is ${of.found}, and must be ${of.expected}: ${of.why}.`,
  limitMissing: ({ example }: { readonly example: string }) =>
    `A frame round a block needs its greatest finished size, the longer way. Type a length, such as ${example}.`,
  compared: ({
    found,
    expected,
  }: {
    readonly found?: string | undefined;
    readonly expected?: string | undefined;
  }) =>
    [
      ...(found === undefined ? [] : [`it is ${found}`]),
      ...(expected === undefined ? [] : [`it should be ${expected}`]),
    ].join(', and '),
  line: ({ line }: { readonly line: number }) => `Line ${line}`,
  quoted: ({ text }: { readonly text: string }) => `“${text}”`,
};
