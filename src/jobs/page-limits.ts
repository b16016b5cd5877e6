/** How large a plan may be that the page opens: who hands one to it can know that before. */

/**
 * A plan's text is parsed where she types, at each change. A plan is a page of text; a thousand lines without mistakes
 * are parsed in the time of a picture on the screen. Mistakes take ten times as long: whoever opens a text asks the
 * worker first, and one with mistakes is not kept.
 */
export const MOST_PLAN = 20_000;
export const MOST_PLAN_LINES = 1_000;

export const isPlanSized = (plan: string): boolean =>
  plan.length <= MOST_PLAN && plan.split(/\r\n|\r|\n/, MOST_PLAN_LINES + 1).length <= MOST_PLAN_LINES;
