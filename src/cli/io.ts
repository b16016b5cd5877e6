/**
 * All that a run of the program touches of the world outside: what `main` is given instead of reaching for
 * it, so that tests run it in memory, with a full disk or a broken pipe.
 */

import type { FileHandle } from 'node:fs/promises';

export interface Sink {
  /** Resolves when the text has left; rejects when it cannot, but for a reader that has gone, which is quiet. */
  write(chunk: string | Uint8Array): Promise<void>;
}

/** What the program knows about a file without opening it. */
export interface FileStatus {
  readonly dev: number;
  readonly ino: number;
  readonly mode: number;
  isFile(): boolean;
  isDirectory(): boolean;
  isSymbolicLink(): boolean;
}

export type OpenFile = Pick<FileHandle, 'read' | 'writeFile' | 'chmod' | 'sync' | 'close'>;

/** The calls of node:fs/promises and node:fs that are used, and nothing else. */
export interface Files {
  open(path: string, flags: string): Promise<OpenFile>;
  stat(path: string): Promise<FileStatus>;
  lstat(path: string): Promise<FileStatus>;
  access(path: string, mode: number): Promise<void>;
  realpath(path: string): Promise<string>;
  readdir(path: string): Promise<string[]>;
  unlink(path: string): Promise<void>;
  /** At once, so that no signal comes between the names of files that belong together. */
  renameSync(from: string, to: string): void;
  copyFileSync(from: string, to: string): void;
  unlinkSync(path: string): void;
}

/** The folder that the command runs in has been removed. */
export class FolderGone extends Error {}

export interface Io {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** Throws a FolderGone where there is none. */
  readonly cwd: string;
  readonly env: { readonly SWAGWRIGHT_DEBUG?: string | undefined };
  readonly files: Files;
  /** The folder of templates that come with the program. */
  readonly profiles: string;
  /**
   * Has a file removed if the program is interrupted from now on; the function that comes back calls that
   * off.
   */
  removeWhenInterrupted(path: string): () => void;
}

/** 0 done; 1 the plan cannot be made, or the input is wrong; 2 wrong use. */
export type ExitCode = 0 | 1 | 2;
