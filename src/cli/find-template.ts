/** Where a template's file is, when a plan or the command line names it. */

import { dirname, isAbsolute, join, resolve } from 'node:path';
import { nearestOf, type Problem, ProblemError, quoted } from '../document/index.ts';
import { errorCode } from './file-problem.ts';
import type { Io } from './io.ts';

/** A name is a path when it says so: by a slash, or by the ending of a file. */
export const isPath = (name: string): boolean => /[\\/]/.test(name) || /\.(ya?ml|json)$/i.test(name);

/** Where a plan names a template. */
type Named = Required<Pick<Problem, 'place' | 'key'>>;

const ENDING = '.yaml';

/** The names of the templates that come with the program. */
const profileNames = async (io: Io): Promise<string[]> => {
  try {
    const names = await io.files.readdir(io.profiles);
    return names
      .filter((n) => n.endsWith(ENDING))
      .map((n) => n.slice(0, -ENDING.length))
      .sort();
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  }
};

/**
 * The file of a template that a plan names: a path from the plan's own folder, or the name of one that comes
 * with the program. Throws a ProblemError, with the place and key where the plan names it, that names the nearest.
 */
export const findPlanTemplate = async (
  io: Io,
  planFile: string,
  name: string,
  where: Named = { place: { file: planFile }, key: 'template' },
): Promise<string> => {
  // A plan may come from a stranger: it can name templates, and no other file of this machine.
  const fault = /\p{Cc}/u.test(name)
    ? 'the name of a file has no control characters'
    : isPath(name) && !/\.(ya?ml|json)$/i.test(name)
      ? 'a template of your own is a file that ends in .yaml, .yml or .json'
      : undefined;
  if (fault !== undefined)
    throw new ProblemError([
      {
        code: 'not-a-template',
        message: fault,
        ...where,
        found: quoted(name),
      },
    ]);
  if (isPath(name)) return isAbsolute(name) ? name : join(dirname(planFile), name);
  return findProfile(io, name, where, dirname(planFile));
};

/** The file of a template that the command line names: a file if there is one, otherwise one that comes along. */
export const findNamedTemplate = async (io: Io, name: string): Promise<string> => {
  if (isPath(name) || (await exists(io, name))) return name;
  return findProfile(io, name, {}, '.');
};

const findProfile = async (
  io: Io,
  name: string,
  where: Partial<Problem>,
  folder: string,
): Promise<string> => {
  const names = await profileNames(io);
  // Compared with what is there, so that no name can lead out of the folder.
  if (names.includes(name)) return join(io.profiles, name + ENDING);
  const beside = join(folder, name + ENDING);
  const near = nearestOf(name, names);
  const hint = (await exists(io, beside))
    ? `write ./${name}${ENDING} for the file in this folder`
    : near === undefined
      ? 'a file of your own is named by its path'
      : `did you mean ${quoted(near)}?`;
  throw new ProblemError([
    {
      ...where,
      code: 'unknown-template',
      message: `there is no template named ${quoted(name)}`,
      ...(names.length > 0 ? { expected: `one of ${names.join(', ')}, or a path` } : {}),
      hint,
    },
  ]);
};

const exists = async (io: Io, name: string): Promise<boolean> => {
  try {
    return (await io.files.stat(resolve(io.cwd, name))).isFile();
  } catch (error) {
    if (errorCode(error) !== undefined) return false;
    throw error;
  }
};
