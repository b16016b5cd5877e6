/** An invented template, as the file format's description shows it. */
export const BALUSTER = `title: Baluster
units: in
thickness: 1/4
edge:
  - start: [0, 0]
  - arc: { to: [3 1/4, 1/8], rise: 3/4 }
  - break: shoulder
  - line: { to: [5, 1/8] }
  - curve: { to: [7, 3/4], handles: [[5 3/4, 1/8], [6 1/2, 1/4]] }
alignment:
  - { name: A, at: 1/4 }
channelLines: [1/8, 1/4, 3/8]
`;

/** The sample with another edge. */
export const withEdge = (steps: readonly string[], units = 'mm'): string =>
  [`units: ${units}`, 'edge:', ...steps.map((s) => `  - ${s}`), ''].join('\n');
