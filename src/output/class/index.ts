/** What a class needs on paper, as one file. */

export { type Packet, sheetsOf, studentTable, type TapedDrawing, writeClass } from './write-class.ts';
