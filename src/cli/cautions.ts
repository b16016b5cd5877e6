/** What can hurt, for the cover of what is printed: the same words wherever it is printed from. */

export { CAUTIONS } from '../output/mockup/index.ts';
