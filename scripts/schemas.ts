/** What `write-schemas.mjs` needs of the program; it is built along with it, because Node 20 runs no TypeScript. */

export { planJsonSchema } from '../src/plan/index.ts';
export { templateJsonSchema } from '../src/template/index.ts';
