/** What goes with the sheets of a mock-up, the same wherever they are printed from: from the terminal or the page. */

export { CAUTIONS } from './cautions.ts';
export { describeDesign } from './describe-design.ts';
export { usualShow } from './usual-show.ts';
