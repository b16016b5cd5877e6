/** Points, lines and arcs, and what a round foot does to them. The only folder that imports paper. */

export * from './biarc.ts';
export * from './box.ts';
export * from './contact.ts';
export * from './crossing.ts';
export * from './edge-fault.ts';
export * from './line-cut.ts';
export * from './motion.ts';
export * from './nearness.ts';
export * from './parallels.ts';
export * from './path.ts';
export * from './piece.ts';
export * from './point.ts';
export * from './rolling-foot.ts';
export * from './support.ts';
export * from './svg-path.ts';
export * from './unreached.ts';
export * from './region.ts';
export * from './region-boolean.ts';
export * from './region-inset.ts';
export * from './farthest.ts';
export * from './arc-spline.ts';
export * from './fair-curve.ts';
