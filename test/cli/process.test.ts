/** The built command line as processes of their own: what only a real process can show. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/render/version';
import { chartText } from '../skirts';
import type { Run } from './workplace';
import { contents, runIn, workplace } from './workplace';

const CLI = resolve('dist/cli.js');
const DEMO = resolve('size-charts/demo.csv');
const place = workplace();

function spawned(args: readonly string[], env: Readonly<Record<string, string>> = {}): Run {
  expect(existsSync(CLI), 'dist/cli.js is there: npm run build:code').toBe(true);
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd: place.path,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
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
    const { texts } = loading('grade', DEMO, '--base', '12', '--out', 'loaded');
    expect(texts.some((text) => text.includes('isAccessorNode'))).toBe(true);
  });
});

describe('the process', () => {
  it('works with npx in the checkout', () => {
    const { status, stdout } = spawnSync('npx --no-install skirtgrade --version', {
      encoding: 'utf8',
      shell: true,
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
    expect(contents(join(place.path, 'output/demo'))).toEqual(written);
  });

  it('ends with 1 where a check fails, with all files written', () => {
    place.write('apple.csv', chartText('in', { waist_girth: [40, 42], hip_girth: [38, 40] }));
    const run = spawned(['grade', 'apple.csv', '--base', '1', '--out', 'apple']);
    expect(run).toMatchObject({ status: 1, stderr: '' });
    expect(contents(join(place.path, 'apple')).size).toBe(6 + 2);
  });

  it('ends with 2 for a refusal, which goes to the error stream alone, without a stack', () => {
    const run = spawned(['grade', 'none.csv', '--base', '10', '--out', 'none']);
    expect(run).toMatchObject({ status: 2, stdout: '' });
    expect(run.stderr).toMatch(/^skirtgrade: none\.csv: [^\n]+ Got: ENOENT[^\n]+\.\n$/);
    expect(existsSync(join(place.path, 'none'))).toBe(false);
    expect(spawned([]).status).toBe(2);
  });

  it('does not color what no terminal reads, whatever the variables for color say', () => {
    const { status, stdout } = spawned(['check', DEMO], { FORCE_COLOR: '1' });
    expect(status).toBe(0);
    expect(stdout).toContain('warning');
    expect(stdout).not.toContain('\u001b');
  });
});
