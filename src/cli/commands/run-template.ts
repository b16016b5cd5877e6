/** What `template` does. */

import { type Place, ProblemError } from '../../document/index.ts';
import { type Drawing, drawSilhouette, drawTemplate, SHEET, styled } from '../../drawing/index.ts';
import { correctionLines } from '../../jobs/correction.ts';
import { describeFault, stitchTemplate } from '../../swag/index.ts';
import { readTemplate, type Template } from '../../template/index.ts';
import { readClearance } from '../clearance.ts';
import { defaultName } from '../default-name.ts';
import { findNamedTemplate } from '../find-template.ts';
import type { Io } from '../io.ts';
import { printJson, say } from '../messages.ts';
import { checkOutputOption } from '../output-option.ts';
import { readTextFile } from '../read-file.ts';
import { sheetsPdf } from '../render-pdf.ts';
import { describeTemplate, templateAsData } from '../report-template.ts';
import { describeSheets, layOutSheets, pagesWords, readSheetOptions, sheetsAsData } from '../sheets.ts';
import { sayUnprintable } from '../unprintable.ts';
import { openOutput } from '../write-set.ts';
import type { TemplateOptions } from './template.ts';

const solidOf = (template: Template, place: Place): Drawing => {
  const drawn = drawSilhouette(template, template.title);
  if (drawn.ok) return drawn.drawing;
  throw new ProblemError([
    {
      code: 'no-silhouette',
      message: 'the edge comes in the way of straight sides, so it cannot be drawn as a filled shape',
      place,
      hint: 'leave --solid out',
    },
  ]);
};

export const runTemplate = async (io: Io, name: string, options: TemplateOptions): Promise<void> => {
  checkOutputOption(options, 'pdf');
  const clearance = readClearance(options.clearance);
  const layout = readSheetOptions(options, 'in', 'letter');
  const source = await readTextFile(io, await findNamedTemplate(io, name));
  const reading = readTemplate(source.text, source.name);
  if (!reading.ok) throw new ProblemError(reading.problems);
  const { template, placeAt } = reading;
  const stitched = stitchTemplate(template, clearance);
  if (!stitched.ok)
    throw new ProblemError([
      { ...describeFault(template, clearance, stitched.fault), place: placeAt(['edge']) },
    ]);
  const output = await openOutput(
    io,
    {
      asked: options.output,
      usual: defaultName(source.path, options.solid ? 'solid' : 'outline'),
    },
    [source.path],
  );
  const drawing = styled(
    options.solid ? solidOf(template, placeAt(['edge'])) : drawTemplate(stitched.stitching, template.title),
    SHEET,
  );
  const sheets = layOutSheets(drawing, layout, options);
  const summary = describeTemplate(stitched.stitching);
  const pdf = await sheetsPdf(drawing, sheets, { title: template.title, summary, units: 'in' });
  await output.write(pdf.bytes);
  await sayUnprintable(io, '', [template]);
  for (const line of summary) await say(io, line);
  await say(io, `${output.name}: ${describeSheets(sheets)}; ${pagesWords(pdf.pages)}`);
  for (const line of correctionLines(sheets.measured)) await say(io, line);
  if (options.json)
    await printJson(io, {
      units: 'mm and degrees',
      file: output.name,
      ...sheetsAsData(sheets),
      ...templateAsData(stitched.stitching),
    });
};
