import { execFileSync } from 'node:child_process';
import { existsSync, renameSync } from 'node:fs';
import * as files from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileProblem } from '../../src/cli/file-problem.ts';
import type { Io, OpenFile } from '../../src/cli/io.ts';
import { MOST_BYTES, readTextFile } from '../../src/cli/read-file.ts';
import { openOutput } from '../../src/cli/write-set.ts';
import { describeProblem, ProblemError } from '../../src/document/index.ts';
import { emptyFolder, filesBut, systemError, testIo } from './run.ts';

/** The one line that a refusal comes to. */
const refusal = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
  } catch (error) {
    if (error instanceof ProblemError) {
      expect(error.problems.length).toBe(1);
      return describeProblem(error.problems[0]!);
    }
    throw error;
  }
  throw new Error('nothing was refused');
};

const write = async (
  io: Io,
  name: string,
  bytes: string | Uint8Array,
  inputs: string[] = [],
): Promise<void> => (await openOutput(io, { asked: name }, inputs)).write(bytes);

/** Files of which one whole write fails after some bytes have reached the disk. */
const failingFiles = (code: string, where: 'writeFile' | 'sync' | 'close' | 'chmod') =>
  filesBut({
    open: async (path, flags) => {
      const file = await files.open(path, flags);
      if (flags !== 'wx') return file;
      const failing: OpenFile = {
        read: file.read.bind(file),
        writeFile: (data, options) => file.writeFile(data, options),
        chmod: (mode) => file.chmod(mode),
        sync: () => file.sync(),
        close: () => file.close(),
        [where]: async (data: string) => {
          if (where === 'writeFile') await file.writeFile(data.slice(0, 3));
          if (where === 'close') await file.close();
          throw systemError(code);
        },
      };
      return failing;
    },
  });

describe('writing a file', () => {
  it('makes a new file with the usual permissions, and leaves nothing else', async () => {
    const folder = emptyFolder();
    const { io, kept } = testIo(folder);
    await write(io, 'a.svg', 'whole');
    expect(await files.readFile(join(folder, 'a.svg'), 'utf8')).toBe('whole');
    expect(await files.readdir(folder)).toEqual(['a.svg']);
    const usual = join(folder, 'usual');
    await files.writeFile(usual, '');
    expect((await files.stat(join(folder, 'a.svg'))).mode).toBe((await files.stat(usual)).mode);
    expect(kept.pending.size).toBe(0);
  });

  it('replaces a file as a whole and keeps its permissions', async () => {
    const folder = emptyFolder();
    await files.writeFile(join(folder, 'a.svg'), 'earlier', { mode: 0o640 });
    const open = await files.open(join(folder, 'a.svg'), 'r');
    await write(testIo(folder).io, 'a.svg', new Uint8Array([0x61]));
    // Whoever has the earlier file open still reads it whole: the new one is another file.
    expect(await open.readFile('utf8')).toBe('earlier');
    await open.close();
    expect(await files.readFile(join(folder, 'a.svg'), 'utf8')).toBe('a');
    expect((await files.stat(join(folder, 'a.svg'))).mode & 0o777).toBe(0o640);
  });

  it('replaces what a link leads to, and leaves the link', async () => {
    const folder = emptyFolder();
    await files.mkdir(join(folder, 'far'));
    await files.writeFile(join(folder, 'far/real.svg'), 'earlier');
    await files.symlink('far/real.svg', join(folder, 'link.svg'));
    await write(testIo(folder).io, 'link.svg', 'new');
    expect(await files.readlink(join(folder, 'link.svg'))).toBe('far/real.svg');
    expect(await files.readFile(join(folder, 'far/real.svg'), 'utf8')).toBe('new');
    expect((await files.readdir(join(folder, 'far'))).length).toBe(1);
  });

  it.each(['ENOSPC', 'EDQUOT', 'EIO', 'EFBIG'])(
    'keeps the earlier file when %s strikes half-way',
    async (code) => {
      const stages = ['writeFile', 'sync', 'close', 'chmod'] as const;
      for (const stage of stages) {
        const folder = emptyFolder();
        await files.writeFile(join(folder, 'a.svg'), 'earlier');
        const { io, kept } = testIo(folder, { files: failingFiles(code, stage) });
        const line = await refusal(write(io, 'a.svg', 'the new one'));
        expect(line).toMatch(/^a\.svg: .*; nothing was written$/);
        expect(await files.readdir(folder)).toEqual(['a.svg']);
        expect(await files.readFile(join(folder, 'a.svg'), 'utf8')).toBe('earlier');
        expect(kept.pending.size).toBe(0);
      }
    },
  );

  it('keeps the earlier file when the last step fails', async () => {
    const folder = emptyFolder();
    await files.writeFile(join(folder, 'a.svg'), 'earlier');
    const renameSync = (): void => {
      throw systemError('EACCES');
    };
    const { io } = testIo(folder, { files: filesBut({ renameSync }) });
    expect(await refusal(write(io, 'a.svg', 'new'))).toBe(
      'a.svg: there is no permission to write it; nothing was written',
    );
    expect(await files.readdir(folder)).toEqual(['a.svg']);
    expect(await files.readFile(join(folder, 'a.svg'), 'utf8')).toBe('earlier');
  });

  it('is not misled by another run that finishes the file between two looks at it', async () => {
    const folder = emptyFolder();
    let looked = false;
    const meanwhile = filesBut({
      stat: async (path) => {
        if (looked || !path.endsWith('a.svg')) return files.stat(path);
        looked = true;
        await files.writeFile(path, 'from another run');
        throw systemError('ENOENT');
      },
    });
    await write(testIo(folder, { files: meanwhile }).io, 'a.svg', 'new');
    expect(await files.readFile(join(folder, 'a.svg'), 'utf8')).toBe('new');
  });

  it('announces the half-written file for removal while there is one', async () => {
    const folder = emptyFolder();
    const announced: string[] = [];
    const { io, kept } = testIo(folder);
    const watching = filesBut({
      renameSync: (from, to) => {
        announced.push(...kept.pending);
        renameSync(from, to);
      },
    });
    await write({ ...io, files: watching }, 'a.svg', 'new');
    expect(announced.length).toBe(1);
    expect(announced[0]).toMatch(/\.swagwright-[0-9a-f]{12}\.tmp$/);
  });

  it('two at once into one file: one of them, whole', async () => {
    const folder = emptyFolder();
    const { io } = testIo(folder);
    const texts = Array.from({ length: 8 }, (_, i) => String(i).repeat(200_000));
    await Promise.all(texts.map((text) => write(io, 'a.svg', text)));
    expect(texts).toContain(await files.readFile(join(folder, 'a.svg'), 'utf8'));
    expect(await files.readdir(folder)).toEqual(['a.svg']);
  });

  it('refuses, before any work, what cannot be written', async () => {
    const folder = emptyFolder();
    await files.mkdir(join(folder, 'sheets'));
    await files.writeFile(join(folder, 'file'), '');
    await files.symlink('nowhere', join(folder, 'dead'));
    await files.symlink('ring', join(folder, 'ring'));
    const { io } = testIo(folder);
    const cases: [string, string][] = [
      ['sheets', 'sheets: this is a folder and not a file; name a file in it'],
      ['new/', 'new/: this is a folder and not a file; name a file in it'],
      ['.', '.: this is a folder and not a file; name a file in it'],
      ['none/a.pdf', 'none/a.pdf: the folder that it should go into does not exist'],
      ['file/a.pdf', 'file/a.pdf: a part of this path is a file and not a folder'],
      ['dead', 'dead: this is a link that leads nowhere'],
      ['ring', 'ring: the links in this path run in a circle'],
      [`${'x'.repeat(300)}.pdf`, `${'x'.repeat(300)}.pdf: the name is too long`],
    ];
    for (const [name, line] of cases) expect(await refusal(openOutput(io, { asked: name }, []))).toBe(line);
    expect((await files.readdir(folder)).length).toBe(4);
  });

  it.each(['EACCES', 'EROFS'])('refuses a folder or a file that may not be written (%s)', async (code) => {
    const folder = emptyFolder();
    await files.writeFile(join(folder, 'kept.pdf'), 'kept');
    const access = async (): Promise<void> => {
      throw systemError(code);
    };
    const { io } = testIo(folder, { files: filesBut({ access }) });
    const reason = code === 'EROFS' ? 'the disk is read-only' : 'there is no permission to write it';
    for (const name of ['new.pdf', 'kept.pdf'])
      expect(await refusal(openOutput(io, { asked: name }, []))).toBe(
        `${name}: ${reason}; nothing was written`,
      );
  });

  it('never writes over a file that was read, under whatever name', async () => {
    const folder = emptyFolder();
    await files.writeFile(join(folder, 'plan.yaml'), 'title: kept');
    await files.symlink('plan.yaml', join(folder, 'soft'));
    await files.link(join(folder, 'plan.yaml'), join(folder, 'hard'));
    await files.symlink('.', join(folder, 'here'));
    const { io } = testIo(folder);
    const names = ['plan.yaml', './plan.yaml', 'soft', 'hard', 'here/plan.yaml', join(folder, 'plan.yaml')];
    for (const name of names)
      expect(await refusal(openOutput(io, { asked: name }, ['other', 'plan.yaml']))).toContain(
        'would write over it',
      );
    expect(await files.readFile(join(folder, 'plan.yaml'), 'utf8')).toBe('title: kept');
    await write(io, 'other.svg', 'fine', ['plan.yaml']);
  });

  it.runIf(existsSync('/dev/full'))(
    'says so when a device is full, and leaves the device alone',
    async () => {
      const { io } = testIo(emptyFolder());
      expect(await refusal(write(io, '/dev/full', 'x'))).toBe(
        '/dev/full: the disk is full; nothing was written',
      );
      expect((await files.stat('/dev/full')).isCharacterDevice()).toBe(true);
    },
  );

  it('sends what is meant for - to stdout', async () => {
    const folder = emptyFolder();
    const { io, kept } = testIo(folder);
    await write(io, '-', '<svg/>');
    expect(kept.out).toBe('<svg/>');
    expect(await files.readdir(folder)).toEqual([]);
  });
});

describe('reading a file', () => {
  it('gives the text, without a byte order mark', async () => {
    const folder = emptyFolder();
    await files.writeFile(join(folder, 'plan.yaml'), '\ufefftitle: ½ in\n');
    expect((await readTextFile(testIo(folder).io, 'plan.yaml')).text).toBe('title: ½ in\n');
  });

  it('says in one line why not', async () => {
    const folder = emptyFolder();
    await files.mkdir(join(folder, 'sub'));
    await files.writeFile(join(folder, 'file'), 'x');
    await files.writeFile(join(folder, 'big.yaml'), Buffer.alloc(MOST_BYTES + 1, 0x61));
    await files.writeFile(join(folder, 'just.yaml'), Buffer.alloc(MOST_BYTES, 0x61));
    await files.writeFile(join(folder, 'scan.png'), Buffer.from([0x89, 0x50, 0, 1]));
    const wide = Buffer.from('title: Corbel\n', 'utf16le');
    await files.writeFile(join(folder, 'wide.yaml'), wide);
    await files.writeFile(
      join(folder, 'marked.yaml'),
      Buffer.concat([Buffer.from([0xfe, 0xff]), wide.swap16()]),
    );
    await files.writeFile(join(folder, 'latin.yaml'), Buffer.from([0x74, 0xe9, 0x0a]));
    const { io } = testIo(folder);
    const cases: [string, string][] = [
      ['none.yaml', 'none.yaml: there is no such file'],
      ['sub', 'sub: this is a folder and not a file; name a file in it'],
      ['file/plan.yaml', 'file/plan.yaml: a part of this path is a file and not a folder'],
      ['big.yaml', 'big.yaml: this file is too large; expected at most 4 MB of text'],
      ['scan.png', 'scan.png: this is not a text file'],
      ['latin.yaml', 'latin.yaml: this is not text in UTF-8; save it again as UTF-8'],
      ['wide.yaml', 'wide.yaml: this is text in UTF-16; save it again as UTF-8'],
      ['marked.yaml', 'marked.yaml: this is text in UTF-16; save it again as UTF-8'],
    ];
    for (const [name, line] of cases) expect(await refusal(readTextFile(io, name))).toBe(line);
    expect((await readTextFile(io, 'just.yaml')).text.length).toBe(MOST_BYTES);
  });

  it('does not let a name reach the terminal raw', async () => {
    const { io } = testIo(emptyFolder());
    const line = await refusal(readTextFile(io, 'a\u001b[2J\n\u202eb.yaml'));
    expect(line).toBe('a [2J b.yaml: there is no such file');
  });

  it('stops at the limit of a file without end', async () => {
    const { io } = testIo(emptyFolder());
    expect(await refusal(readTextFile(io, '/dev/zero'))).toContain('too large');
    expect(await refusal(readTextFile(io, '/dev/zero', true))).toContain('not a plain file');
  });

  it('reads a pipe that the user named, but none that another file names', async () => {
    const folder = emptyFolder();
    const pipe = join(folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    const { io } = testIo(folder);
    expect(await refusal(readTextFile(io, 'pipe', true))).toContain('not a plain file');
    const [read] = await Promise.all([readTextFile(io, 'pipe'), files.writeFile(pipe, 'title: piped')]);
    expect(read.text).toBe('title: piped');
  });
});

describe('what the system says', () => {
  it('is put into words, also when it is rare; other errors are not taken for it', () => {
    expect(fileProblem(systemError('EXDEV'), 'a', 'writing')?.message).toBe('cannot be written (EXDEV)');
    expect(fileProblem(new TypeError('x'), 'a', 'reading')).toBeUndefined();
    expect(fileProblem(systemError('ERR_INVALID_ARG_TYPE'), 'a', 'reading')).toBeUndefined();
  });
});
