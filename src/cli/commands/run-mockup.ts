/** What `mockup` does. */

import { countSheets } from '../../jobs/laid-part.ts';
import { type Mockup, mockup } from '../../jobs/mockup.ts';
import type { Shown } from '../../jobs/part.ts';
import { type QuiltMockup, quiltMockup } from '../../jobs/quilt-mockup.ts';
import type { SheetPlan } from '../../pagination/index.ts';
import type { Plan } from '../../plan/index.ts';
import { asAsked } from '../asked.ts';
import { defaultName } from '../default-name.ts';
import type { Io } from '../io.ts';
import { readWithout } from '../layers.ts';
import { MEANS } from '../means.ts';
import { printJson, say } from '../messages.ts';
import type {
  LayerOptions,
  OutputOptions,
  PartOptions,
  RollOptions,
  SheetOptions,
  ShowOptions,
  TransferOptions,
} from '../options.ts';
import { checkOutputOption } from '../output-option.ts';
import { designAsData, outwardReach } from '../report-design.ts';
import { sayMade } from '../say-made.ts';
import { readSheetsOrRoll, sheetsAsData } from '../sheets.ts';
import { plannedQuilt } from '../steps.ts';
import { readTransfer } from '../transfer.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export type MockupOptions = OutputOptions &
  SheetOptions &
  RollOptions &
  LayerOptions &
  PartOptions &
  ShowOptions &
  TransferOptions & { readonly count?: boolean };

export const runMockup = async (io: Io, file: string, options: MockupOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  if (options.count && (options.output !== undefined || options.json))
    throw wrongValue(
      '--count',
      `it writes nothing, and cannot go with ${options.json ? '--json' : '--output'}`,
    );
  const without = readWithout(options);
  const transferIn = readTransfer(options);
  if (options.as === 'projector')
    throw wrongValue('--as', 'a projector shows one picture, and no sheets', {
      hint: 'swagwright draw PLAN -o projector.pdf --as projector',
    });
  const { title, parts, inputs } = await plannedQuilt(io, file, options.part);
  const { plan, name } = parts[0]!;
  const transfer = transferIn(plan.units);
  const layout = readSheetsOrRoll(options, transfer, plan.units, plan.paper);
  const wanted = { show: options.show, without, transfer, layout };
  if (options.count) {
    for (const line of await asAsked(options, async () => countSheets(parts, wanted))) await say(io, line);
    return;
  }
  const alone = parts.length === 1 ? name : undefined;
  const output = await openOutput(
    io,
    { asked: options.output, usual: defaultName(file, transfer?.kind ?? 'mockup', 'pdf', alone) },
    inputs,
  );
  const made = await asAsked<Mockup | QuiltMockup>(options, () =>
    parts.length === 1 ? mockup(parts[0]!, wanted, MEANS) : quiltMockup(title, parts, wanted, MEANS),
  );
  await output.write(made.bytes);
  await sayMade(io, output, made);
  if (!options.json) return;
  const head = { units: 'mm and degrees', file: output.name };
  await printJson(
    io,
    'sheets' in made
      ? { ...head, ...partAsData(plan, made.shown, made.sheets) }
      : {
          ...head,
          parts: made.parts.map(({ part, shown, sheets }) => ({
            part: part.name,
            ...partAsData(part.plan, shown, sheets),
          })),
        },
  );
};

const partAsData = ({ channels }: Plan, { design, scope }: Shown, sheets: SheetPlan): object => ({
  shows: scope.label,
  ...sheetsAsData(sheets),
  ...designAsData(design, outwardReach(channels)),
});
