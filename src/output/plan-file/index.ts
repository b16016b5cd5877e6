/** A chosen fit as a complete plan, in the person's own file. */

export { planSaying } from './plan-saying.ts';
