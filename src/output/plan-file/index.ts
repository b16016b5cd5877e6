/** A chosen fit as a complete plan, in the person's own file. */

export { planWithFit } from './plan-with-fit.ts';
