import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { workplace } from './workplace';

const place = workplace();
place.write(
  'c.csv',
  chartText('cm', { waist_girth: [66, 70, 74], hip_girth: [92, 96, 100] }, ['S', 'M', '"L, tall"']),
);

const blended = (command: string, parts: string, ...args: readonly string[]) =>
  place.run(command, 'c.csv', '--base', 'M', '--blend', parts, ...args);

describe('--blend', () => {
  it('grades one body between sizes, with labels and files of its name', async () => {
    const { status, stdout, stderr } = await blended(
      'grade',
      'hip M, waist S',
      '--out',
      'graded',
      '--verbose',
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^c\.csv: waist S, hip M, style/u);
    expect(stdout).toMatch(/^waist S, hip M +\d/mu);
    expect(
      readdirSync(join(place.path, 'graded')).filter((name) => name.startsWith('size-')),
    ).toEqual(['size-waist_S_hip_M.svg']);
    for (const drawing of ['nest.svg', 'size-waist_S_hip_M.svg'])
      expect(place.read(`graded/${drawing}`)).toContain('Size waist S, hip M');
  });

  it('prints it, a size with a comma in double quotes', async () => {
    const { status, stdout } = await blended('print', '"hip L, tall",waist M', '--out', 'printed');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^c\.csv: waist M, hip L, tall, style/u);
    expect(existsSync(join(place.path, 'printed/print-a4.pdf'))).toBe(true);
  });

  it.each([
    ['waist S', 'skirtgrade: --blend: the blend does not say which size its hip has.'],
    ['waist S, hip M, hip S', 'skirtgrade: --blend: the blend has hip twice.'],
    ['waist S, hip M, bust S', 'skirtgrade: --blend: the blend has an unknown part.'],
    [
      'waist S, hip XL',
      'skirtgrade: --blend, c.csv: the range has no such size for the hip of the blend.',
    ],
  ])('refuses %s and writes nothing', async (parts, words) => {
    const { status, stderr } = await blended('grade', parts, '--out', 'none');
    expect(status).toBe(2);
    expect(stderr).toContain(words);
    expect(existsSync(join(place.path, 'none'))).toBe(false);
  });

  it('is refused beside sizes, and of a pattern that is given', async () => {
    const beside = await blended('print', 'waist S, hip M', '--sizes', 'S');
    expect([beside.status, beside.stderr]).toEqual([
      2,
      expect.stringContaining('--blend: a blend is drawn alone, without other sizes'),
    ]);
    const given = await place.run(
      ...['grade', '--pattern', 'p.csv', '--rules', 'r.csv', '--blend', 'waist S, hip M'],
    );
    expect([given.status, given.stderr]).toEqual([
      2,
      expect.stringContaining('--blend: the option belongs to drafting'),
    ]);
  });
});
