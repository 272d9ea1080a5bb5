import { readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/render/version';
import { someSizes } from '../samples';
import { runIn, workplace } from './workplace';

const place = workplace();
const DEMO = resolve('size-charts/demo.csv');
const FEW = 'few.csv';
place.write(FEW, someSizes(readFileSync(DEMO, 'utf8'), ['2', '12', '24']));

describe('help and version', () => {
  it('tell what there is', async () => {
    const help = await place.run('--help');
    expect(help.status).toBe(0);
    for (const word of ['grade', 'check', 'styles', 'Exit codes: 0'])
      expect(help.stdout).toContain(word);
    expect(await place.run('--version')).toMatchObject({
      status: 0,
      stdout: `${VERSION}\n`,
      stderr: '',
    });
  });
});

describe('the terminal', () => {
  const QUARTER = ['--style', 'pencil', '--out', 'demo'];
  const calls: readonly (readonly string[])[] = [
    ['--help'],
    ['grade', '--help'],
    ['check', '--help'],
    ['grade', DEMO, '--base', '12', '--out', 'demo'],
    ['grade', FEW, '--base', '24', '--out', 'demo', '--unit', 'mm', '--round', '1mm'],
    ['check', DEMO],
    ['check', DEMO, '--fractions', '--against', 'ansur-1988'],
    ['styles'],
    ['styles', 'straight'],
  ];

  it.each(calls)('shows %s %s at 80 columns without color', async (...args) => {
    const { status, stdout } = await place.run(...args.filter((arg) => arg !== undefined));
    expect(status).toBe(0);
    // A word longer than the line, such as the path of a file, cannot be broken.
    const wide = stdout
      .split('\n')
      .filter((line) => line.length > 80 && /\S\s+\S/.test(line.slice(8)));
    expect(wide).toEqual([]);
    expect(stdout).not.toContain('\u001b');
  });

  it("shows the sizes with their finished girths, in the chart's unit", async () => {
    const { stdout } = await place.run('grade', DEMO, ...QUARTER, '--base', '12', '--verbose');
    expect(stdout).toContain('Finished measurements in inches');
    // Body 31 and 41 1/2 in; hip ease 2 in, hem taper 1 in at each of four sides.
    expect(stdout).toMatch(/^12 \(base\) +31 +43 1\/2 +39 1\/2 /m);
    expect(stdout).toContain('Rules for the step from 12 to 14');
    // Half of a quarter of 1 1/2 in, and a quarter of it.
    expect(stdout).toMatch(/^front +dart_tip +3\/16 +0$/m);
    expect(stdout).toMatch(/^front +side_waist +3\/8 +0$/m);
    expect(stdout).toContain('Written to demo: nest.svg');
  });

  it('shows the step down where the base is the largest size', async () => {
    const { stdout } = await place.run('grade', DEMO, ...QUARTER, '--base', '24', '--verbose');
    expect(stdout).toContain('Rules for the step from 24 to 22');
    expect(stdout).toMatch(/^front +side_waist +-5\/8 +0$/m);
  });

  it('colors the severities on a terminal that wants it', async () => {
    const printed = async (color: boolean) => {
      const { status, stdout } = await runIn(place.path, ['check', DEMO, '--verbose'], { color });
      expect(status).toBe(0);
      return stdout;
    };
    const colored = await printed(true);
    expect(colored).toContain('\u001b[36mnote\u001b[0m');
    expect(colored.replace(/\u001b\[\d+m/g, '')).toBe(await printed(false));
  });
});

describe('styles', () => {
  it('are listed with every parameter, its default, range, meaning and source', async () => {
    const { stdout } = await place.run('styles');
    // A line a style, and none of them long.
    for (const name of ['pencil', 'straight', 'fixed-dart', 'shared-a-line'])
      expect(stdout).toMatch(new RegExp(`^${name} +[a-z][^\n]{10,64}$`, 'm'));
    expect(stdout.split('\n').length).toBeLessThan(12);
    const one = (await place.run('styles', 'straight')).stdout;
    expect(one).toContain('hem_taper = 0  (length, -12 in to 6 in)');
    expect(one).toContain('hip_ease = 5 cm; in a chart in inches 2 in  (length, -4 in to 12 in)');
    expect(one).toMatch(/zip_allowance[^]*?allowance for the zip[^]*?default: common practice/);
    expect(one).not.toContain('pencil');
    for (const line of ['dart', 'waist', 'side', 'hem'])
      for (const text of [one, (await place.run('styles', 'shared-pencil')).stdout])
        expect(text).toMatch(new RegExp(`^  ${line}: .{10}`, 'm'));
    expect((await place.run('styles', 'tulip')).status).toBe(2);
  });
});

describe('check', () => {
  it('compares without writing a file', async () => {
    const before = readdirSync(place.path);
    const { status, stdout } = await place.run('check', DEMO, '--against', 'astm-d5585-95');
    expect(status).toBe(0);
    expect(stdout).toContain('Against astm-d5585-95');
    expect(readdirSync(place.path)).toEqual(before);
    expect((await place.run('check', DEMO, '--against', 'none')).status).toBe(2);
  });
});
