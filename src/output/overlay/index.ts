/** What was traced, drawn over the picture that it was traced from. */

export { type OverlayCanvas, type OverlayLook, paintOverlay } from './paint-overlay.ts';
