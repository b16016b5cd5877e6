/** The neutral picture: named layers of paths, areas and texts in mm at true size. */

export * from './draw-design.ts';
export * from './draw-plan.ts';
export * from './draw-template.ts';
export * from './drawing.ts';
export * from './filling.ts';
export * from './ghost.ts';
export * from './legend.ts';
export * from './scope.ts';
export * from './silhouette.ts';
export * from './spacer.ts';
export * from './style.ts';
