/** Half swags, runs, corners: from a template and a plan to a design on the quilt, in mm. */

export * from './channel-setting.ts';
export * from './channels.ts';
export * from './choices.ts';
export * from './counts.ts';
export * from './design.ts';
export * from './edge-problem.ts';
export * from './field.ts';
export * from './fit.ts';
export * from './from-plan.ts';
export * from './marking.ts';
export * from './misfit.ts';
export * from './near-miss.ts';
export * from './pausing.ts';
export * from './placing.ts';
export * from './pose.ts';
export * from './regions.ts';
export * from './runs.ts';
export * from './score.ts';
export * from './search.ts';
export * from './seat.ts';
export * from './setting.ts';
export * from './shape.ts';
export * from './smallest-change.ts';
export * from './stitching.ts';
export * from './thread.ts';
export * from './ways.ts';
