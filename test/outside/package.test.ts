/** The package that `npm pack` makes, installed by npm into an empty folder without a network. */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { chartText } from '../skirts';

const PROJECT = resolve('.');
const place = mkdtempSync(join(tmpdir(), 'skirtgrade-package-'));
// A name with a blank, as folders of people have.
const folder = join(place, 'my skirts');

afterAll(() => {
  rmSync(place, { recursive: true });
});

function run(command: string, args: readonly string[], cwd: string) {
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    // Whatever would ask a registry fails.
    env: { ...process.env, npm_config_offline: 'true', npm_config_audit: 'false' },
  });
  return { status, text: stdout + stderr };
}

const skirtgrade = (...args: readonly string[]) =>
  run(process.execPath, [join(folder, 'node_modules/skirtgrade/dist/cli.js'), ...args], folder);

describe('the package', () => {
  it('is packed and installs without a network, alone', () => {
    expect(existsSync(join(PROJECT, 'dist/cli.js')), 'npm run build:code').toBe(true);
    const packed = run(
      'npm',
      ['pack', '--ignore-scripts', '--silent', '--pack-destination', place],
      PROJECT,
    );
    expect(packed).toMatchObject({ status: 0 });
    const name = readdirSync(place).find((file) => file.endsWith('.tgz'));
    mkdirSync(folder);
    const installed = run('npm', ['install', '--silent', join(place, name ?? '')], folder);
    expect(installed).toEqual({ status: 0, text: '' });
    const packages = readdirSync(join(folder, 'node_modules')).filter(
      (one) => !one.startsWith('.'),
    );
    expect(packages).toEqual(['skirtgrade']);
    // The command has its own name there, and npx finds it without asking for a package.
    expect(run('npx', ['--no-install', 'skirtgrade', '--version'], folder)).toEqual({
      status: 0,
      text: `${(JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }).version}\n`,
    });
  });

  it('grades, prints and assesses in the folder it was installed in', () => {
    writeFileSync(
      join(folder, 'my chart.csv'),
      chartText('in', { waist_girth: [26, 27, 29], hip_girth: [36, 37, 39] }, ['8', '10', '12']),
    );
    const graded = skirtgrade('grade', 'my chart.csv', '--base', '10', '--out', 'graded');
    expect(graded.status).toBe(0);
    expect(readFileSync(join(folder, 'graded/nest.svg'), 'utf8')).toContain('<svg');
    const printed = skirtgrade('print', 'my chart.csv', '--base', '10', '--out', 'printed');
    expect(printed.status).toBe(0);
    expect(readFileSync(join(folder, 'printed/print-a4.pdf'), 'latin1')).toMatch(/^%PDF-/u);
    const assessed = skirtgrade(
      ...['assess', 'my chart.csv', 'graded/grade-rules.csv', '--base', '10'],
    );
    expect(assessed.status).toBe(0);
    expect(assessed.text).toContain('Score: 100 of 100');
  });

  it('is a library there', () => {
    writeFileSync(
      join(folder, 'use.mjs'),
      "import { STYLES, gradeChart } from 'skirtgrade';\n" +
        "const chart = '# unit: cm\\nmeasurement,38,40\\nwaist_girth,70,74\\nhip_girth,96,100\\n';\n" +
        "console.log(STYLES.length, gradeChart({ chart, base: '38' }).range.sizes.length);\n",
    );
    expect(run(process.execPath, ['use.mjs'], folder)).toEqual({ status: 0, text: '6 2\n' });
  });
});
