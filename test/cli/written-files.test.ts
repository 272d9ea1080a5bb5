/** What is on the disk after a call: one whole set, nothing of anybody else's touched. */
import { createHash } from 'node:crypto';
import fs, {
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeFiles } from '../../src/cli/write-files';
import { longFile } from '../../src/files/result-file';
import { chartText } from '../skirts';
import { asFirstRun, contents, workplace, typed } from './workplace';

const place = workplace();
const at = (name: string): string => join(place.path, name);
const SIZES = ['8', '10'];
const CHART = chartText('in', { waist_girth: [25, 26], hip_girth: [35, 36] }, SIZES);
place.write('chart.csv', CHART);

// Files are the same matter for a plain style, which is soon drawn.
const FEW = typed('chart.csv --base 10 --style pencil');

const grade = (out: string, ...more: readonly string[]) =>
  place.run('grade', ...FEW, '--out', out, ...more);

/** Expects a refusal of this code word for word, and not a byte changed. */
async function expectUntouched(args: readonly string[], ...words: readonly string[]) {
  const before = contents(place.path);
  const { status, stdout, stderr } = await place.run(...args);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  for (const word of words) expect(stderr).toContain(word);
  expect(contents(place.path)).toEqual(before);
}

const IS_INPUT = 'a result would replace a file that was read for it';
const CHANGED = 'did not write, or that was changed since';

describe('an input', () => {
  it('is not replaced by a result, by its name, a soft link, or a hard link', async () => {
    for (const folder of ['named', 'soft', 'hard']) mkdirSync(at(folder));
    place.write('named/findings.csv', CHART);
    place.write('mine.csv', CHART);
    symlinkSync(at('mine.csv'), at('soft/findings.csv'));
    linkSync(at('mine.csv'), at('hard/findings.csv'));
    for (const [chart, out] of [
      ['named/findings.csv', 'named'],
      ['mine.csv', 'soft'],
      ['mine.csv', 'hard'],
    ] as const) {
      const call = ['grade', chart, '--base', '10', '--style', 'pencil', '--out', out];
      await expectUntouched(call, IS_INPUT, `--out, ${out}`);
      await expectUntouched([...call, '--replace'], IS_INPUT);
    }
  });

  it('is not replaced through a link to its folder', async () => {
    symlinkSync(at('named'), at('other-name'));
    await expectUntouched(typed('grade named/findings.csv --base 10 --out other-name'), IS_INPUT);
  });

  it('is not replaced by a ladder, a drawing of its own or an exercise', async () => {
    await expectUntouched(
      typed('explain chart.csv front.side_waist --base 10 --style pencil --out chart.csv'),
      IS_INPUT,
    );
    expect(await grade('cad', '--dxf')).toMatchObject({ status: 0 });
    const drawn = typed('grade --pattern cad/pattern.dxf --rules cad/pattern.rul');
    await expectUntouched([...drawn, '--out', 'cad', '--dxf'], IS_INPUT);
  });

  it('of the set that the results replace stays, where no result has its name', async () => {
    await grade('again', '--dxf');
    const before = readFileSync(at('again/pattern.dxf'), 'utf8');
    const drawn = typed('grade --pattern again/pattern.dxf --rules again/pattern.rul');
    expect((await place.run(...drawn, '--out', 'again')).status).toBeLessThan(2);
    expect(readFileSync(at('again/pattern.dxf'), 'utf8')).toBe(before);
    expect(existsSync(at('again/nest.dxf'))).toBe(false);
  });
});

describe('what is no file', () => {
  it('is not replaced by a result, whatever the options', async () => {
    mkdirSync(at('odd/nest.svg'), { recursive: true });
    const explain = typed('explain chart.csv front.side_waist --base 10 --style pencil --out');
    for (const call of [
      [...explain, '/dev/full'],
      [...explain, '/dev/null'],
      ['grade', ...FEW, '--out', 'odd'],
    ])
      for (const more of [[], ['--replace']])
        await expectUntouched(
          [...call, ...more],
          'a result would replace what is no file',
          '--out',
        );
    await expectUntouched(
      ['grade', ...FEW, '--out', '/dev/null'],
      'the results go into a folder',
      'Got: a device.',
    );
    await expectUntouched(['grade', ...FEW, '--out', 'chart.csv'], 'a file');
  });
});

describe('a print of other settings', () => {
  const OTHER = 'Do not cut from print-a0.pdf: it is of another run';
  const print = (...more: readonly string[]) =>
    place.run('print', ...FEW, ...typed('--out cut --booklet none --paper a0'), ...more);

  it('stays, and is named by all that is written beside it until it is made again', async () => {
    expect((await print()).stdout).not.toContain('Do not cut');
    expect((await grade('cut')).stdout).not.toContain('Do not cut');
    // Where sizes are stacked, and which unit is shown, changes no paper.
    expect((await grade('cut', '--stack', 'side_hip', '--unit', 'cm')).stdout).not.toContain(
      'Do not cut',
    );
    for (const other of [
      ['--style', 'fixed-dart'],
      ['--set', 'hem_allowance=1 1/8 in'],
      ['--round', '1/4in'],
    ]) {
      const { status, stdout } = await grade('cut', ...other);
      expect(status).not.toBe(2);
      expect(stdout.replace(/\s+/gu, ' ')).toContain(OTHER);
    }
    const quiet = await grade('cut', '--style', 'fixed-dart', '--quiet');
    expect(quiet.stderr).toContain('Do not cut');
    expect(quiet.stdout).not.toContain('Do not cut');
    const told = await grade('cut', '--style', 'fixed-dart', '--json');
    expect(JSON.parse(told.stdout)).toMatchObject({
      result: { of_another_skirt: ['print-a0.pdf'] },
    });
    expect((await print()).stdout).toContain('Do not cut from drawing.svg');
    expect((await print('--style', 'fixed-dart')).stdout).not.toContain('Do not cut');
    expect(readFileSync(at('cut/report.md'), 'utf8')).toContain(
      'Style fixed-dart, nothing set; stacked on center\\_waist, rules exact.',
    );
  });

  it('of another chart of the same name is named too', async () => {
    place.write('changing.csv', CHART);
    const changing = (what: string) =>
      place.run(
        what,
        'changing.csv',
        '--base',
        '10',
        '--style',
        'pencil',
        '--out',
        'changed',
        '--quiet',
      );
    await changing('print');
    place.write('changing.csv', CHART.replace('26', '26 1/2'));
    expect((await changing('grade')).stderr).toContain('Do not cut');
  });

  it('of which the report tells what is set', async () => {
    await grade('told', '--set', 'hem_taper=1 1/2 in', '--round', '1/16in');
    expect(readFileSync(at('told/report.md'), 'utf8')).toContain(
      'Style pencil, set: hem\\_taper = 1 1/2 in; stacked on center\\_waist, rules rounded to',
    );
  });
});

describe('a table of bodies', () => {
  const draft = (...more: readonly string[]) =>
    place.run('draft', 'chart.csv', '--style', 'pencil', '--out', 'both', ...more);

  it('takes not the place of one of sizes under the same name, nor the other way round', async () => {
    await grade('both');
    const before = contents(at('both'));
    const { status, stderr } = await draft();
    expect(status).toBe(2);
    expect(stderr).toContain('a file of another kind, which grade wrote');
    expect(stderr).toContain('or --replace');
    expect(contents(at('both'))).toEqual(before);
    expect(await draft('--replace')).toMatchObject({ status: 0 });
    expect((await grade('both')).stderr).toContain('which draft wrote');
  });

  it('takes the place of an earlier one', async () => {
    for (const run of [1, 2])
      expect(
        await place.run(...typed('draft chart.csv --style pencil --out bodies')),
        `${run}`,
      ).toMatchObject({
        status: 0,
      });
  });
});

describe('a file that somebody changed', () => {
  it('is not replaced without --replace', async () => {
    const exercise = typed('exercise --seed 7 --out exercise');
    expect(await place.run(...exercise)).toMatchObject({ status: 0 });
    const chart = readFileSync(at('exercise/chart.csv'), 'utf8');
    expect(await place.run(...exercise)).toMatchObject({ status: 0 });
    place.write('exercise/sheet.csv', 'my answers');
    await expectUntouched(exercise, CHANGED, 'or --replace. Got: sheet.csv');
    expect(await place.run(...exercise, '--replace')).toMatchObject({ status: 0 });
    expect(readFileSync(at('exercise/sheet.csv'), 'utf8')).not.toBe('my answers');
    expect(readFileSync(at('exercise/chart.csv'), 'utf8')).toBe(chart);
  });

  it('is not replaced where nothing says who wrote it', async () => {
    mkdirSync(at('unknown'));
    place.write('unknown/nest.svg', '<svg/>');
    await expectUntouched(['grade', ...FEW, '--out', 'unknown'], CHANGED);
    // A file that is what would be written anyway does no harm.
    await grade('known');
    place.write('unknown/nest.svg', readFileSync(at('known/nest.svg'), 'utf8'));
    expect(await grade('unknown')).toMatchObject({ status: 0 });
  });

  it('stays and is named where the run does not write it', async () => {
    await grade('kept', '--dxf');
    place.write('kept/nest.dxf', 'mine now');
    const { stdout } = await grade('kept');
    expect(stdout).toContain('not part of this one: nest.dxf');
    expect(stdout).toMatch(
      /Gone with an earlier run, which wrote them: pattern\.dxf, pattern\.rul/,
    );
    expect(readFileSync(at('kept/nest.dxf'), 'utf8')).toBe('mine now');
    expect(existsSync(at('kept/pattern.dxf'))).toBe(false);
  });
});

describe('a set', () => {
  it('is listed with the digests of its files', async () => {
    await grade('listed');
    const lines = readFileSync(at('listed/.skirtgrade-written'), 'utf8').split('\n');
    const entries = lines.flatMap((line) => {
      const [, digest, name = ''] = /^([0-9a-f]{64}) {2}(.*)$/.exec(line) ?? [];
      return digest === undefined ? [] : [{ digest, name }];
    });
    const names = readdirSync(at('listed')).filter((name) => !name.startsWith('.'));
    expect(entries.map(({ name }) => name).sort()).toEqual(names.sort());
    for (const { digest, name } of entries) {
      // FIPS 180-4, as Node has it.
      const own = createHash('sha256').update(readFileSync(at(`listed/${name}`)));
      expect(own.digest('hex')).toBe(digest);
    }
  });

  it('of one command leaves that of another', async () => {
    await grade('both');
    const graded = contents(at('both'));
    await place.run('print', ...FEW, '--out', 'both');
    await grade('both');
    const pages = readdirSync(at('both')).filter((name) => name.endsWith('.pdf'));
    expect(pages.length).toBeGreaterThan(0);
    for (const [path, bytes] of graded) {
      if (!path.endsWith('written'))
        expect(asFirstRun(path, readFileSync(path, 'latin1'))).toBe(asFirstRun(path, bytes));
    }
  });

  it('leaves files and folders of others where they are', async () => {
    mkdirSync(at('shared/notes'), { recursive: true });
    place.write('shared/notes/a.txt', 'a');
    place.write('shared/b.txt', 'b');
    for (const more of [['--dxf'], []]) {
      expect(await grade('shared', ...more)).toMatchObject({ status: 0 });
      expect(readFileSync(at('shared/notes/a.txt'), 'utf8')).toBe('a');
      expect(readFileSync(at('shared/b.txt'), 'utf8')).toBe('b');
      expect(existsSync(at('shared/pattern.dxf'))).toBe(more.length > 0);
    }
    rmSync(at('shared/notes'), { recursive: true });
    expect(await grade('shared', '--dxf')).toMatchObject({ status: 0 });
    expect(readFileSync(at('shared/b.txt'), 'utf8')).toBe('b');
  });

  it('leaves no other trace beside it or within it', () => {
    const all = readdirSync(place.path, { recursive: true, encoding: 'utf8' });
    expect(all.filter((name) => name.includes('staging'))).toEqual([]);
  });
});

describe('what a killed run left', () => {
  /** The number of a process that has ended: one above the largest that Linux gives. */
  const GONE = 4_194_305;

  it('beside the folder is cleared, and the old folder given back', async () => {
    await grade('killed', '--dxf');
    place.write('killed/mine.txt', 'mine');
    const before = contents(at('killed'));
    const staging = at(`.killed.skirtgrade-staging-${GONE}`);
    mkdirSync(join(staging, 'new'), { recursive: true });
    writeFileSync(join(staging, 'new/nest.svg'), 'half');
    // Killed between the two renames.
    renameSync(at('killed'), join(staging, 'old-0'));
    await expect(
      place.run('grade', 'chart.csv', '--base', '99', '--out', 'killed'),
    ).resolves.toMatchObject({ status: 2 });
    expect(await grade('killed', '--dxf')).toMatchObject({ status: 0 });
    expect(existsSync(staging)).toBe(false);
    expect(contents(at('killed'))).toEqual(before);
  });

  it('within the folder is undone', async () => {
    mkdirSync(at('undone/folder'), { recursive: true });
    await grade('undone');
    const before = contents(at('undone'));
    const staging = at(`undone/.skirtgrade-staging-${GONE}`);
    mkdirSync(join(staging, 'new'), { recursive: true });
    mkdirSync(join(staging, 'old'));
    const steps = [
      { name: 'nest.svg', hadOld: true, hasNew: true },
      { name: 'pattern.dxf', hadOld: false, hasNew: true },
      { name: 'findings.csv', hadOld: true, hasNew: true },
    ];
    writeFileSync(join(staging, 'journal.json'), JSON.stringify(steps));
    renameSync(at('undone/nest.svg'), join(staging, 'old/nest.svg'));
    place.write('undone/nest.svg', 'new');
    place.write('undone/pattern.dxf', 'new');
    writeFileSync(join(staging, 'new/findings.csv'), 'new');
    // A refusal at writing clears first, so that what is left is the old set alone.
    place.write('undone/folder/findings.csv', CHART);
    symlinkSync(at('undone/folder/findings.csv'), at('undone/size-9.svg'));
    expect(await grade('undone')).toMatchObject({ status: 0 });
    expect(existsSync(staging)).toBe(false);
    expect(existsSync(at('undone/pattern.dxf'))).toBe(false);
    for (const [path, bytes] of before) {
      expect(asFirstRun(path, readFileSync(path, 'latin1'))).toBe(asFirstRun(path, bytes));
    }
  });
});

describe('what comes in between', () => {
  const order = { set: 'grade' };
  const write = (folder: string, files: Parameters<typeof writeFiles>[2]) =>
    writeFiles(folder, at(folder), files, order, new Set());
  const plain = (text: string) => ['a', 'b', 'c'].map((name) => ({ name, text }));
  /** Three files, of which the second does something while it is written. */
  const doing = (text: string, job: () => void) => {
    const [first, , last] = plain(text);
    const parts = function* () {
      job();
      yield text;
    };
    return [first, longFile('b', parts), last].flatMap((file) => file ?? []);
  };
  const old = async (folder: string): Promise<ReadonlyMap<string, string>> => {
    await write(folder, plain('old'));
    return contents(at(folder));
  };

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('a %s leaves the old set', async (signal) => {
    const before = await old(signal);
    const stopped = write(
      signal,
      doing('new', () => process.emit(signal)),
    );
    await expect(stopped).rejects.toThrow(`stopped by ${signal}; nothing was written`);
    expect(contents(at(signal))).toEqual(before);
    await expect(
      write(
        `${signal}-new/deep`,
        doing('new', () => process.emit(signal)),
      ),
    ).rejects.toThrow();
    expect(existsSync(at(`${signal}-new`))).toBe(false);
  });

  it('a folder that is removed is made again, and one above it is not', async () => {
    await old('removed');
    const remove = (name: string) => () => {
      rmSync(at(name), { recursive: true });
    };
    await write('removed', doing('new', remove('removed')));
    expect(['a', 'b', 'c'].map((name) => readFileSync(at(`removed/${name}`), 'utf8'))).toEqual([
      ...['new', 'new', 'new'],
    ]);
    await old('above/results');
    await expect(write('above/results', doing('new', remove('above')))).rejects.toThrow(
      'the results cannot be written',
    );
    expect(existsSync(at('above'))).toBe(false);
  });

  it('a file of somebody else stays, and so does one changed in the last moment', async () => {
    await old('between');
    const files = doing('new', () => {
      place.write('between/theirs', 'theirs');
    });
    await write('between', files);
    expect(readFileSync(at('between/theirs'), 'utf8')).toBe('theirs');
    const changing = doing('newer', () => {
      place.write('between/c', 'by hand');
    });
    await expect(write('between', changing)).rejects.toThrow('was changed since');
    expect(readFileSync(at('between/c'), 'utf8')).toBe('by hand');
    expect(readFileSync(at('between/a'), 'utf8')).toBe('new');
  });

  it('a set that cannot be put in its place within a folder is taken back', async () => {
    mkdirSync(at('back/folder'), { recursive: true });
    const before = await old('back');
    const files = doing('new', () => {
      // The last file goes missing, so that the first two are in their places already.
      const [staging = ''] = readdirSync(at('back')).filter((name) => name.includes('staging'));
      mkdirSync(at(`back/${staging}/new/c/in-the-way`), { recursive: true });
    });
    await expect(write('back', files)).rejects.toThrow('the results cannot be written');
    expect(contents(at('back'))).toEqual(before);
  });
});

describe('a run that is killed while it takes the earlier set away', () => {
  /** A process number that no system gives: above the most of Linux, 2 to the 22nd (proc(5)). */
  const NOBODY = 2 ** 22 + 1;

  /** Does a call whose staging folder loses only `lost` before the program is gone. */
  async function killed(out: string, beside: boolean, lost: (path: string) => void) {
    const { rmSync: whole } = fs;
    const staging = at(beside ? `.${out}` : `${out}/`) + '.skirtgrade-staging-';
    const own = staging + String(process.pid);
    fs.rmSync = (path, options) => {
      if (path !== own) {
        whole(path, options);
        return;
      }
      lost(own);
      throw new Error('killed');
    };
    syncBuiltinESMExports();
    try {
      expect((await grade(out, '--set', 'hip_ease=3in')).stderr).toContain('killed');
    } finally {
      fs.rmSync = whole;
      syncBuiltinESMExports();
    }
    renameSync(own, staging + String(NOBODY));
  }

  /** Takes each list of what was written away, which is the first name of a folder that is listed. */
  function withoutLists(folder: string): void {
    for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
      if (path.endsWith('.skirtgrade-written')) rmSync(join(folder, path));
  }

  it('leaves nothing of that set to the next, and loses no file of anybody else', async () => {
    await grade('fresh', '--set', 'hip_ease=3in');
    for (const beside of [true, false]) {
      const out = beside ? 'killed-beside' : 'killed-within';
      await grade(out, '--dxf');
      place.write(`${out}/notes.txt`, 'mine');
      if (!beside) mkdirSync(at(`${out}/folder`));
      await killed(out, beside, withoutLists);
      await grade(out, '--set', 'hip_ease=3in');
      const left = readdirSync(at(out)).filter((name) => !/^(?:notes\.txt|folder)$/.test(name));
      expect(left).toEqual(readdirSync(at('fresh')));
      const textOf = (path: string): string => asFirstRun(path, readFileSync(at(path), 'latin1'));
      for (const name of left) expect(textOf(`${out}/${name}`), name).toBe(textOf(`fresh/${name}`));
      expect(readFileSync(at(`${out}/notes.txt`), 'utf8')).toBe('mine');
    }
    expect(readdirSync(place.path).filter((name) => name.includes('staging'))).toEqual([]);
  });
});

describe('a folder that cannot change places', () => {
  /** What a system would say, thrown by one of its calls for the paths that `at` picks. */
  async function withRefusal(
    call: 'linkSync' | 'renameSync',
    code: string,
    picks: (path: string) => boolean,
    run: () => Promise<unknown>,
  ): Promise<void> {
    const whole = fs[call];
    let refused = 0;
    fs[call] = (from, to) => {
      if (!picks(String(from))) {
        whole(from, to);
        return;
      }
      refused += 1;
      throw Object.assign(new Error(`${code}: refused`), { code });
    };
    syncBuiltinESMExports();
    try {
      await run();
    } finally {
      fs[call] = whole;
      syncBuiltinESMExports();
    }
    expect(refused).toBeGreaterThan(0);
  }

  it.each([
    ['has no links, as a memory card', 'linkSync', 'EPERM', () => true],
    [
      'is held, as by a window of Windows',
      'renameSync',
      'EBUSY',
      (path: string) => path === at('EBUSY'),
    ],
  ] as const)('since it %s is written file by file', async (_, call, code, picks) => {
    await grade(code, '--dxf');
    place.write(`${code}/notes.txt`, 'mine');
    await withRefusal(call, code, picks, async () => {
      const { status, stderr } = await grade(code, '--set', 'hip_ease=3in');
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    });
    await grade('plain', '--set', 'hip_ease=3in');
    const left = readdirSync(at(code)).filter((name) => name !== 'notes.txt');
    expect(left).toEqual(readdirSync(at('plain')));
    const textOf = (path: string): string => asFirstRun(path, readFileSync(at(path), 'latin1'));
    for (const name of left) expect(textOf(`${code}/${name}`), name).toBe(textOf(`plain/${name}`));
    expect(readFileSync(at(`${code}/notes.txt`), 'utf8')).toBe('mine');
    expect(readdirSync(place.path).filter((name) => name.includes('staging'))).toEqual([]);
  });
});

describe('a folder named after its chart', () => {
  it('ends in no dot and no blank, which Windows cannot open', async () => {
    place.write('my chart .csv', CHART);
    const { stdout } = await place.run(
      'grade',
      'my chart .csv',
      '--base',
      '10',
      '--style',
      'pencil',
    );
    expect(stdout).toContain('Written to output/my chart: ');
  });
});
