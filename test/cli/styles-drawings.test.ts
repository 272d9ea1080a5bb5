import { expect, it } from 'vitest';
import { STYLE_NAMES } from '../styles';
import { workplace } from './workplace';

const place = workplace();

it('styles --out writes a line drawing of every style, and of the one that is named', async () => {
  const { status, stdout } = await place.run('styles', '--out', 'drawings');
  expect(status).toBe(0);
  for (const name of STYLE_NAMES) {
    expect(stdout.replace(/\s+/gu, ' ')).toContain(`${name}.svg`);
    expect(place.read(`drawings/${name}.svg`)).toContain(`<title>${name}</title>`);
  }
  // A flared skirt is wider for its height than a tapered one.
  const shape = (name: string): number => {
    const [, width, height] =
      /viewBox="0 0 ([\d.]+) ([\d.]+)"/u.exec(place.read(`drawings/${name}.svg`)) ?? [];
    return Number(width) / Number(height);
  };
  expect(shape('shared-a-line')).toBeGreaterThan(1.1 * shape('shared-pencil'));
  expect((await place.run('styles', 'pencil', '--out', 'one')).status).toBe(0);
  expect(() => place.read('one/straight.svg')).toThrow();
});

it('styles --out refuses a style that there is not, and writes nothing', async () => {
  const { status } = await place.run('styles', 'no-such', '--out', 'none');
  expect(status).toBe(2);
  expect(() => place.read('none/pencil.svg')).toThrow();
});
