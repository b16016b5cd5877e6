export * from './drawing.ts';
