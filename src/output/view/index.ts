/** What a picture of a drawing shows, and how large that is: the same for every writer. */

export { shownDrawing, shownLayers, type ViewOptions, viewBox } from './extent.ts';
