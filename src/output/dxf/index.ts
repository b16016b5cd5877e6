/** A drawing as a DXF file. */

export { writeDxf } from './write-dxf.ts';
