/**
 * English: every word that the page itself says, by the part of the page, in the order in which she meets them.
 *
 * What is said with a value is a function of values that have names, so that another language may put them in another
 * order; numbers and lengths come as they are written, and counts as numbers, because each language has its own way to
 * say how many. Where something else than text stands within a sentence, such as a name in bold, the sentence is a list.
 *
 * What terminal and page both say stands where both take it from, and not here: the words of marks, settings and cards
 * in `output`, of fits in `swag`, of pages and files in `jobs`, of fills in `fill`, and what is wrong with a plan, a
 * template or a length in `plan`, `template`, `trace` and `length`.
 */

export { answersWords, madeWords } from './answers.ts';
export { handWords } from './by-hand.ts';
export { channelsWords } from './channels.ts';
export { fitsWords, templatesWords } from './choose.ts';
export { classWords } from './class.ts';
export { coloursWords } from './colours.ts';
export { designsWords } from './designs.ts';
export { fieldsWords } from './fields.ts';
export { fillsWords } from './fills.ts';
export { glassWords, screenWords } from './glass.ts';
export { footWords, headWords } from './head.ts';
export { marksWords } from './marks.ts';
export { measureWords } from './measure.ts';
export { measuredWords } from './measured.ts';
export { filesWords, noticeWords } from './notices.ts';
export { ownWords } from './own.ts';
export { paperWords } from './paper.ts';
export { partsWords } from './parts.ts';
export { planWords } from './plan.ts';
export { pointsWords } from './points.ts';
export { projectorWords } from './projector.ts';
export { quiltingWords } from './quilting.ts';
export { sheetsWords } from './sheets.ts';
export { swagWords } from './swag.ts';
export { introWords, termsWords } from './terms.ts';
export { traceWords } from './trace.ts';
export { wishesWords } from './wishes.ts';
export { workWords } from './work.ts';
