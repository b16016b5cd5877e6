/** What a class needs on paper, as one file. */

export { type Packet, sheetsOf, type TapedDrawing, writeClass } from './write-class.ts';
