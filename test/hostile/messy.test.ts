/** Charts as they come from elsewhere: each is read, or refused in words that say why. */
import { describe, expect, it } from 'vitest';
import { workplace } from '../cli/workplace';
import { MESSY } from './messy';

const place = workplace();

describe('a messy chart', () => {
  it.each(MESSY)('with $what ends with $ends', async ({ text, ends, says }) => {
    place.write('messy.csv', text);
    const { status, stdout, stderr } = await place.run('check', 'messy.csv');
    expect(status, stdout + stderr).toBe(ends);
    expect(stdout + stderr).toContain(says);
  });
});
