/** Settings that go together under one name: those of each style, and ready-made allowances. */
import { bundledTable } from '../table/bundled-table';
import { typedValue } from './market-value';
import presetsCsv from './presets.csv';
import type { Setting } from './setting';

type Column = 'preset' | 'parameter' | 'value' | 'in_inches' | 'note';

const ROWS = bundledTable<Readonly<Record<Column, string>>>(presetsCsv);

/** What a preset sets on top of a block, each with the source of its value; `place` is where it is asked for. */
export function presetSettings(name: string, place: Setting['place'] = {}): readonly Setting[] {
  return ROWS.filter(({ preset }) => preset === name).map(
    ({ parameter, value, in_inches, note }) => ({
      ...{ parameter, note, place },
      value: typedValue(value, in_inches),
    }),
  );
}
