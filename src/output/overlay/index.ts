/** What was traced, drawn over the picture that it was traced from. */

export { paintOverlay } from './paint-overlay.ts';
