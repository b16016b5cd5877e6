/**
 * Writes the JSON Schemas of plan and template files into dist/schema/, from the schemas that the program
 * itself reads them with, so that the two can never differ. Runs at the end of `npm run build`.
 */

import { mkdirSync, writeFileSync } from 'node:fs';

const { planJsonSchema, templateJsonSchema } = await import('../dist/parts/schemas.js');

const folder = new URL('../dist/schema/', import.meta.url);
mkdirSync(folder, { recursive: true });
const schemas = { plan: planJsonSchema(), template: templateJsonSchema() };
for (const [name, schema] of Object.entries(schemas))
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(schema, null, 2)}\n`);
