/** The tests of one room for `npm run test:mutations`, in the order in which the room names them: the quick ones first. */

import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const { MUTANTS_TESTS = 'tests/**/*.test.ts' } = process.env;
const include = MUTANTS_TESTS.split(' ');

class AsNamed extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number =>
      include.findIndex((one) => moduleId.endsWith(one));
    return files.toSorted((a, b) => place(a) - place(b));
  }
}

export default defineConfig({
  test: {
    include,
    testTimeout: 300_000,
    hookTimeout: 300_000,
    isolate: false,
    sequence: { sequencer: AsNamed },
  },
});
