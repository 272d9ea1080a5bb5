/** The built command line as processes of their own: what only a real process can show. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { setTimeout as delay } from 'node:timers/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { clearEarlier } from '../../src/cli/staging';
import { VERSION } from '../../src/render/version';
import { LONG } from '../samples';
import { chartText } from '../skirts';
import type { Run } from '../cli/workplace';
import { asFirstRun, contents, runIn, workplace, typed } from '../cli/workplace';

const CLI = resolve('dist/cli.js');
const place = workplace();
// What a process does with its files is the same for few sizes of a plain style, which are soon drawn.
const FEW = typed('few.csv --base 10 --style pencil');
place.write(
  'few.csv',
  chartText('in', { waist_girth: [25, 26, 27], hip_girth: [35, 36, 37] }, ['8', '10', '12']),
);

function spawned(args: readonly string[], env: Readonly<Record<string, string>> = {}): Run {
  expect(existsSync(CLI), 'dist/cli.js is there: npm run build:code').toBe(true);
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd: place.path,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr, shown: stderr };
}

/** A call, and the texts of the files of the bundle that it loads, from the engine's own coverage. */
function loading(...args: readonly string[]): Run & { readonly texts: readonly string[] } {
  const folder = join(place.path, `coverage-${args.join('').replace(/\W/g, '')}`);
  const run = spawned(args, { NODE_V8_COVERAGE: folder });
  const urls = readdirSync(folder).flatMap((name) => {
    const { result } = JSON.parse(readFileSync(join(folder, name), 'utf8')) as {
      result: readonly { url: string }[];
    };
    return result.map(({ url }) => url).filter((url) => url.startsWith('file:'));
  });
  return { ...run, texts: urls.map((url) => readFileSync(fileURLToPath(url), 'utf8')) };
}

describe('what is loaded', () => {
  it.each([['--help'], ['--version'], ['grade', '--help']])(
    '%s %s does not load mathjs',
    (...args) => {
      const { texts, status, stderr } = loading(...args.filter((arg) => arg !== undefined));
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
      expect(texts.length).toBeGreaterThan(0);
      expect(texts.some((text) => text.includes('isAccessorNode'))).toBe(false);
    },
  );

  it('is mathjs where it is needed', () => {
    const { texts } = loading('grade', ...FEW, '--out', 'loaded');
    expect(texts.some((text) => text.includes('isAccessorNode'))).toBe(true);
  });
});

it('has the font of printed files and its license beside it', () => {
  const { status } = spawned(['print', ...FEW, '--paper', 'a0', '--out', 'font']);
  expect(status).toBe(0);
  const { size } = statSync(join(place.path, 'font', 'print-a0.pdf'));
  expect(size).toBeGreaterThan(10_000);
  expect(readFileSync('dist/arimo-license.txt', 'utf8')).toContain('SIL OPEN FONT LICENSE');
});

describe('the process', () => {
  it('works with npx in the checkout', () => {
    const { status, stdout } = spawnSync('npx --no-install skirtgrade --version', {
      encoding: 'utf8',
      shell: true,
      // The first call in a checkout would build it anew, under the feet of the tests beside it.
      env: { ...process.env, npm_config_ignore_scripts: 'true' },
    });
    expect({ status, stdout }).toEqual({ status: 0, stdout: `${VERSION}\n` });
  });

  it('ends with 0 for the demo, by the very command that npm start runs', async () => {
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      scripts: { start: string };
    };
    const [node, cli, ...args] = scripts.start.split(' ');
    expect([node, cli]).toEqual(['node', 'dist/cli.js']);
    const demo = args.map((arg) => (arg.startsWith('size-charts/') ? resolve(arg) : arg));
    const run = spawned(demo);
    expect(run).toMatchObject({ status: 0, stderr: '' });
    expect(run.stdout).toContain('Findings: 0 fail');
    // The bundle writes and says what its sources do.
    const written = contents(join(place.path, 'output/demo'));
    expect(written.size).toBeGreaterThan(5);
    expect(await runIn(place.path, demo)).toEqual(run);
    const again = contents(join(place.path, 'output/demo'));
    expect([...again.keys()]).toEqual([...written.keys()]);
    for (const [path, text] of again)
      expect(asFirstRun(path, text)).toEqual(asFirstRun(path, written.get(path) ?? ''));
  });

  it('ends with 1 where a check fails, with all files written', () => {
    place.write('apple.csv', chartText('in', { waist_girth: [40, 42], hip_girth: [38, 40] }));
    const run = spawned(typed('grade apple.csv --base 1 --out apple'));
    expect(run).toMatchObject({ status: 1, stderr: '' });
    expect(contents(join(place.path, 'apple')).size).toBe(9 + 2);
  });

  it('ends with 2 for a refusal, which goes to the error stream alone, without a stack', () => {
    const run = spawned(typed('grade none.csv --base 10 --out none'));
    expect(run).toMatchObject({ status: 2, stdout: '' });
    expect(run.stderr).toMatch(
      /^skirtgrade: none\.csv: there is no such file\. Allowed: [^\n]+(?:\n {2}[^\n]+)?\.\n$/,
    );
    expect(existsSync(join(place.path, 'none'))).toBe(false);
    expect(spawned([]).status).toBe(2);
  });

  it('does not color what no terminal reads, whatever the variables for color say', () => {
    const { status, stdout } = spawned(['check', 'few.csv'], { FORCE_COLOR: '1' });
    expect(status).toBe(0);
    expect(stdout).toContain('warning');
    expect(stdout).not.toContain('\u001b');
  });
});

/** One line of a shell in the workplace; `skirtgrade` in it is the built program. */
function shell(line: string): Run {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', line], {
    cwd: place.path,
    encoding: 'utf8',
    env: { ...process.env, NODE: process.execPath, CLI, CHART: 'few.csv', FEW: FEW.join(' ') },
  });
  return { status, stdout, stderr, shown: stderr };
}

describe('the streams', () => {
  it('may be closed by a reader that has seen enough', () => {
    const { stdout, stderr } = shell(
      '"$NODE" "$CLI" styles | head -1 >&2; echo "${PIPESTATUS[0]}"; ' +
        '"$NODE" "$CLI" check "$CHART" | true; echo "${PIPESTATUS[0]}"',
    );
    expect(stdout).toBe('0\n0\n');
    expect(stderr).toMatch(/^pencil [^\n]*\n$/);
  });

  it('that are full end the program with 4 and one line, which says whether files are written', () => {
    const line = /^skirtgrade: what the program says cannot be written: [^\n]*\n$/;
    const { status, stderr } = shell('"$NODE" "$CLI" styles > /dev/full');
    expect(status).toBe(4);
    expect(stderr).toMatch(line);
    expect(stderr).toContain('No file was written.');
    const graded = shell('"$NODE" "$CLI" grade $FEW --out heard > /dev/full');
    expect(graded.status).toBe(4);
    expect(graded.stderr).toMatch(line);
    expect(graded.stderr).toContain('all of them, in heard.');
    expect(existsSync(join(place.path, 'heard/nest.svg'))).toBe(true);
  });
});

describe('a pipe', () => {
  it('without a writer is refused', () => {
    const { status, stderr } = shell('mkfifo pipe && "$NODE" "$CLI" check pipe');
    expect(status).toBe(2);
    expect(stderr).toContain('Got: a pipe without a writer.');
  });

  it('with a slow writer is read', () => {
    const { status, stdout } = shell('"$NODE" "$CLI" chart <(sleep 0.2; cat "$CHART")');
    expect(status).toBe(0);
    expect(stdout).toBe(shell('"$NODE" "$CLI" chart "$CHART"').stdout);
  });
});

describe('a disk that is full', () => {
  it('leaves no file, and the old set as it was', () => {
    const call = '"$NODE" "$CLI" grade $FEW --out full';
    // No file may have more than 16 blocks: the nest has more.
    expect(shell(`ulimit -f 16; ${call}`)).toMatchObject({ status: 2, stdout: '' });
    expect(readdirSync(place.path).filter((name) => name.includes('full'))).toEqual([]);
    expect(shell(call).status).toBe(0);
    const before = contents(join(place.path, 'full'));
    const { status, stderr } = shell(`ulimit -f 16; ${call} --unit cm`);
    expect(status).toBe(2);
    expect(stderr).toContain('the results cannot be written');
    expect(contents(join(place.path, 'full'))).toEqual(before);
  });
});

describe('a run that is stopped', () => {
  const folders = { beside: join(place.path, 'beside'), within: join(place.path, 'within') };
  const sets = [['--dxf'], ['--unit', 'cm']] as const;
  const calls = sets.map((more) => ['grade', ...FEW, ...more, '--out']);

  /** The files of the set alone: no staging folder, nothing of a folder within. */
  function setIn(folder: string): ReadonlyMap<string, string> {
    const files = [...contents(folder)].map(([path, bytes]) => [
      path.slice(folder.length),
      asFirstRun(path, bytes),
    ]);
    return new Map(
      files.filter(([path = '']) => !/staging|notes/u.test(path)) as [string, string][],
    );
  }

  /** Starts a run and stops it `after` ms, from its start or from its first file. */
  async function stopped(
    args: readonly string[],
    folder: string,
    signal: NodeJS.Signals,
    after: number,
    aimed: boolean,
  ): Promise<{ readonly code: number | null; readonly stderr: string }> {
    const child = spawn(process.execPath, [CLI, ...args, folder], { cwd: place.path });
    let stderr = '';
    child.stderr.on('data', (data: Buffer) => (stderr += data.toString()));
    child.stdout.resume();
    const end = once(child, 'close') as Promise<[number | null]>;
    const isWriting = (): boolean =>
      [place.path, folder].some((where) =>
        readdirSync(where).some((name) => name.endsWith(`staging-${child.pid}`)),
      );
    while (aimed && child.exitCode === null && !isWriting()) await delay(0);
    await delay(after);
    child.kill(signal);
    const [code] = await end;
    return { code, stderr };
  }

  it('leaves the old set or the new one, whole', async () => {
    const wholes = calls.map((args, i) => {
      const folder = join(place.path, `whole-${i}`);
      expect(spawned([...args, folder]).status).toBe(0);
      return setIn(folder);
    });
    const isWhole = (folder: string): boolean =>
      wholes.some((whole) => JSON.stringify([...whole]) === JSON.stringify([...setIn(folder)]));
    expect(wholes[0]).not.toEqual(wholes[1]);
    mkdirSync(join(folders.within, 'notes'), { recursive: true });
    for (const folder of Object.values(folders)) spawned([...(calls[0] ?? []), folder]);

    const counts = { whole: 0, told: 0, away: 0, undone: 0 };
    const signals = ['SIGKILL', 'SIGINT', 'SIGTERM'] as const;
    for (let i = 0; i < (LONG ? 300 : 6); i++) {
      const folder = i % 2 === 0 ? folders.beside : folders.within;
      const signal = signals[i % 3] ?? 'SIGKILL';
      // The golden ratio spreads the moments evenly, whatever their number.
      const share = (i * 0.618) % 1;
      const aimed = i % 4 !== 3;
      const args = calls[Math.floor(i / 2) % 2] ?? [];
      const { code, stderr } = await stopped(
        args,
        folder,
        signal,
        share * (aimed ? 25 : 700),
        aimed,
      );
      expect(stderr).toMatch(
        /^(?:skirtgrade: stopped by SIG(?:INT|TERM); nothing was written\.\n)?$/,
      );
      if (stderr !== '') {
        counts.told++;
        expect(code).toBe(signal === 'SIGINT' ? 130 : 143);
      }
      const where = `${signal} ${share} ${aimed} ${folder}`;
      if (existsSync(folder) && isWhole(folder)) counts.whole++;
      else {
        // Killed between the two renames, or while files take their places one by one.
        expect(signal, where).toBe('SIGKILL');
        if (folder === folders.beside) {
          expect(existsSync(folder), where).toBe(false);
          counts.away++;
        } else counts.undone++;
      }
      clearEarlier(folder);
      expect(isWhole(folder), where).toBe(true);
    }
    for (const folder of [place.path, folders.within])
      expect(readdirSync(folder).filter((name) => name.includes('staging'))).toEqual([]);
    if (LONG) console.log(counts);
  });

  it('beside others at the same time leaves one whole set', async () => {
    const folder = join(place.path, 'at-once');
    const ends = await Promise.all(
      [0, 1, 0, 1].map(async (i) => {
        const args = [CLI, ...(calls[i] ?? []), folder];
        const child = spawn(process.execPath, args, { cwd: place.path });
        child.stdout.resume();
        child.stderr.resume();
        return (await once(child, 'close'))[0] as number;
      }),
    );
    expect(ends).toContain(0);
    const found = JSON.stringify([...setIn(folder)]);
    const wholes = [0, 1].map((i) => JSON.stringify([...setIn(join(place.path, `whole-${i}`))]));
    expect(wholes).toContain(found);
  });
});
