/** Moves as arrows; their ends are worked by hand from even steps of a quarter inch, 6.35 mm. */
import { describe, expect, it } from 'vitest';
import { moveFiles } from '../../src/files/move-files';
import { expectRefusal } from '../expect-refusal';
import { FRONT, evenRules, graded } from '../given/sheets';

function drawn(sizes: string, enlarge?: string): string {
  return moveFiles(graded(FRONT, evenRules(sizes)), enlarge).files[0]?.text ?? '';
}

/** The points of each line of a part, in mm. */
function linesOf(svg: string, part: string): readonly (readonly number[])[] {
  const paths = svg.matchAll(new RegExp(`data-part="${part}"[^>]* d="([^"]*)"`, 'gu'));
  return [...paths].map(([, data = '']) => (data.match(/-?[\d.]+/gu) ?? []).map(Number));
}

describe('moves as arrows', () => {
  it('lead through every size, as many times as long as asked', () => {
    const moves = linesOf(drawn('10, 12, 14, 16', '10'), 'move');
    // The side of the hem lies 9 and 25 in from the zero: 228.6 and 635 mm. Ten times a quarter inch is 63.5.
    expect(moves).toContainEqual([228.6, 635, 292.1, 698.5, 355.6, 762]);
    expect(moves).toContainEqual([228.6, 635, 165.1, 571.5]);
    // The tip of the dart, 3 1/2 and 4 in, moves by half of that and not down.
    expect(moves).toContainEqual([88.9, 101.6, 120.65, 101.6, 152.4, 101.6]);
    // Seven points move, each to larger and to smaller sizes; the center of the waist stays.
    expect(moves).toHaveLength(14);
    expect(linesOf(drawn('10, 12, 14, 16'), 'still')).toHaveLength(1);
  });

  it('have a ring at each size between', () => {
    expect(linesOf(drawn('12, 14', '10'), 'size')).toHaveLength(0);
    expect(linesOf(drawn('10, 12, 14, 16, 18', '10'), 'size')).toHaveLength(2 * 7);
  });

  it('are drawn as long as suits the longest where nobody says it', () => {
    // Two steps of a quarter inch along both axes: 17.96 mm, and 80 mm is 4.45 times that.
    expect(drawn('10, 12, 14, 16')).toContain('each drawn 4 times as long as it is.');
    expect(drawn('10, 12, 14, 16', '1/2')).toContain('each drawn 0.5 times as long as it is.');
  });

  it.each(['0', '-2', '1001', '2 in', 'twice'])('refuses %s times', (times) => {
    const words = 'Allowed: a number above 0, up to 1000';
    expectRefusal(() => drawn('12, 14', times), 'bad-option', { field: 'enlarge' }, words);
  });
});
