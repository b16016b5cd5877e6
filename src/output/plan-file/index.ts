/** A chosen fit as a complete plan, in the person's own file. */

export { planWithFit, type TakenFit } from './plan-with-fit.ts';
