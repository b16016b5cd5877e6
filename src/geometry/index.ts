/** Points, lines and arcs, and what a round foot does to them. The only folder that imports paper. */

export * from './box.ts';
export * from './motion.ts';
export * from './path.ts';
export * from './piece.ts';
export * from './point.ts';
