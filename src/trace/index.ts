/** From pictures to outlines: what a scan, a photograph or a drawing shows of a template, in mm. */

export * from './blobs.ts';
export * from './capture-marks.ts';
export * from './contour.ts';
export * from './corners.ts';
export * from './fit-outline.ts';
export * from './homography.ts';
export * from './line-middle.ts';
export * from './picture.ts';
export * from './picture-file.ts';
export * from './shape.ts';
export * from './svg-matrix.ts';
export * from './svg-outline.ts';
export * from './svg-shapes.ts';
export * from './tone.ts';
export * from './trace-picture.ts';
export * from './working-edge.ts';
