/** Where a designer finds a parameter; the headings of the names below are set by hand. */
import { describe, expect, it } from 'vitest';
import { parameterGroups } from '../../src/draft/parameter-groups';
import { STYLES } from '../../src/draft/styles';

describe.each(STYLES.map(({ name, block }) => [name, block.parameters] as const))(
  'the parameters of %s',
  (_, parameters) => {
    const names = parameters.map(({ name }) => name);
    const groups = parameterGroups(names);

    it('are each told once', () => {
      expect(groups.flatMap((group) => group.names).toSorted()).toEqual(names.toSorted());
    });

    it('begin with what is changed first, ten at most', () => {
      const [first] = groups;
      expect(first?.heading).toBe('Changed first');
      expect(first?.names.slice(0, 3)).toEqual(['skirt_length', 'waist_ease', 'hip_ease']);
      expect(first?.names.length).toBeLessThanOrEqual(10);
    });
  },
);

it.each([
  ['front_dart_length', 'Darts'],
  ['back_side_take_up', 'Darts'],
  ['band_ease', 'Ease'],
  ['stride_wanted', 'Lengths'],
  ['tuck_length', 'Finish'],
  ['underlap', 'Finish'],
  ['side_rise', 'Side and hem'],
  ['taper_start', 'Side and hem'],
  ['vent_allowance', 'Allowances'],
  ['band_tolerance', 'Tolerances'],
])('%s stands under %s', (name, heading) => {
  expect(parameterGroups([name])).toEqual([{ heading, names: [name] }]);
});
