/** What `mockup` does. */

import { mockup } from '../../jobs/mockup.ts';
import { asAsked } from '../asked.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { MEANS } from '../means.ts';
import { printJson } from '../messages.ts';
import { checkOutputOption } from '../output-option.ts';
import { designAsData, outwardReach } from '../report-design.ts';
import { sayMade } from '../say-made.ts';
import { readSheetOptions, sheetsAsData } from '../sheets.ts';
import { planned } from '../steps.ts';
import { openOutput } from '../write-set.ts';
import type { MockupOptions } from './mockup.ts';

export const runMockup = async (io: Io, file: string, options: MockupOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const without = readWithout(options);
  const { inputs, ...part } = await planned(io, file);
  const { plan } = part;
  const layout = readSheetOptions(options, plan.units, plan.paper);
  const output = await openOutput(io, { asked: options.output, usual: defaultName(file, 'mockup') }, inputs);
  const made = await asAsked(options, () => mockup(part, { show: options.show, without, layout }, MEANS));
  await output.write(made.bytes);
  await sayMade(io, output, made);
  const { shown, sheets } = made;
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      shows: shown.scope.label,
      ...sheetsAsData(sheets),
      ...designAsData(shown.design, outwardReach(plan.channels)),
    });
};
