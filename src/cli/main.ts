/**
 * The command line: parse, run, exit. Nothing is computed here, and nothing but commander is loaded before a
 * command needs it, so that help comes at once.
 */

import { Command, CommanderError } from 'commander';
import { COMMANDS } from './command-list.ts';
import type { ExitCode, Io } from './io.ts';
import { wrongValue } from './wrong-use.ts';

const ABOUT = `Fits swag borders to quilts and prints them at true size: what the needle stitches round a
ruler-foot template, where every mark goes, and paper to tape together before the quilt is risked.`;

const EXAMPLES = `
Examples:
  swagwright mockup raffle-quilt.yaml -o sheets.pdf
  swagwright draw raffle-quilt.yaml -o picture.svg
  swagwright template baluster --paper a4

Lengths are written as you say them: 5 1/2, 5-1/2", 14 cm, 140 mm. Quote those that hold a space.
Exit status: 0 done, 1 the plan cannot be made or the input is wrong, 2 wrong use.`;

/** Runs one command line (without the names of node and the script). Throws only where what says what went wrong cannot be loaded. */
export const main = async (argv: readonly string[], io: Io): Promise<ExitCode> => {
  // Commander writes at once and cannot wait; what it writes is kept, and sent when it is done.
  let help = '';
  const program = new Command('swagwright')
    .description(ABOUT)
    .option('-V, --version', 'print the version')
    .addHelpText('after', EXAMPLES)
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    // Options belong to the command that they follow: `template sheet --paper` is not `template --paper`.
    .enablePositionalOptions()
    .exitOverride()
    .configureOutput({
      writeOut: (text) => {
        help += text;
      },
      writeErr: (text) => {
        help += text;
      },
      outputError: () => {},
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      getOutHelpWidth: () => HELP_WIDTH,
      getErrHelpWidth: () => HELP_WIDTH,
    });
  try {
    for (const entry of COMMANDS) {
      const command = program
        .command(entry.name)
        .summary(entry.summary)
        .helpOption('-h, --help', 'print this help');
      if (argv.includes(entry.name)) (await entry.load())(command, io);
      refuseTwice(command);
    }
    program.on('option:version', () => {
      throw new VersionAsked();
    });
    await program.parseAsync(argv, { from: 'user' });
    return 0;
  } catch (error) {
    return await conclude(error, help, io);
  }
};

/** An option that takes one value is given once: of two that a person typed neither is left out without a word. */
const refuseTwice = (command: Command): void => {
  for (const one of command.commands) refuseTwice(one);
  for (const option of command.options) {
    if (!option.required && !option.optional) continue;
    let times = 0;
    command.on(`option:${option.name()}`, () => {
      times += 1;
      // Those that gather what they are given hold a list.
      if (times > 1 && !Array.isArray(command.getOptionValue(option.attributeName())))
        throw wrongValue(option.long ?? option.flags, 'it is given more than once', {
          expected: 'one value',
        });
    });
  }
};

/** The same on every terminal, so that the README can quote it. */
const HELP_WIDTH = 100;

class VersionAsked extends Error {}

const conclude = async (error: unknown, help: string, io: Io): Promise<ExitCode> => {
  try {
    if (error instanceof VersionAsked) {
      const { version } = await import('./version.ts');
      await io.stdout.write(`${await version()}\n`);
      return 0;
    }
    if (error instanceof CommanderError) {
      if (error.exitCode === 0) {
        await io.stdout.write(help);
        return 0;
      }
      if (error.code === 'commander.help') {
        await io.stderr.write(help);
        return 2;
      }
    }
    return await (await import('./failure.ts')).sayFailure(error, io);
  } catch (second) {
    return await (await import('./failure.ts')).sayFailure(second, io).catch(() => 1 as const);
  }
};
