/** The files of a streamed run that is gone on with have what one run in one go writes. */
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { StreamedNames } from '../../src/cli/stream/streamed-set';
import { StreamedSet, finishRenames } from '../../src/cli/stream/streamed-set';
import { expectRefusal } from '../expect-refusal';
import { workplace } from './workplace';

const place = workplace();
const NAMES: StreamedNames = { tables: ['a.csv', 'b.csv'], drawings: false };
const at = (row: number) => ({
  ...{ digest: 'of this run', offset: row, row, drafted: row, refused: 0, turned: 0 },
  isDone: false,
});
const open = (folder: string, replace = false) => {
  mkdirSync(join(place.path, folder), { recursive: true });
  return StreamedSet.open(join(place.path, folder), folder, NAMES, 'of this run', replace);
};

it('goes on at the end of what was recorded, whatever was written after it', () => {
  const first = open('run');
  first.set.append(['head\n', 'other\n']);
  first.set.record(at(0));
  first.set.append(['one\n', '']);
  first.set.record(at(1));
  first.set.append(['half of tw', 'lost']);
  first.set.close();
  const second = open('run');
  expect(second.record).toMatchObject({ row: 1, lengths: [9, 6] });
  second.set.append(['two\n', 'more\n']);
  second.set.record(at(2));
  second.set.close();
  const third = open('run');
  third.set.append(['three\n', '']);
  third.set.record({ ...at(3), isDone: true });
  third.set.close();
  expect(finishRenames(join(place.path, 'run'), NAMES, 'of this run')).toMatchObject({ row: 3 });
  expect(place.read('run/a.csv')).toBe('head\none\ntwo\nthree\n');
  expect(place.read('run/b.csv')).toBe('other\nmore\n');
  expect(existsSync(join(place.path, 'run/draft-progress.json'))).toBe(false);
});

it.each(['', '{', 'null', '{"hello": 1}'])(
  'takes %j for the record of no run of its own',
  (text) => {
    mkdirSync(join(place.path, 'foreign'), { recursive: true });
    place.write('foreign/draft-progress.json', text);
    expectRefusal(() => open('foreign'), 'output-changed', { field: 'out', file: 'foreign' });
    const { set, record } = open('foreign', true);
    expect(record).toBeUndefined();
    set.discard();
  },
);

it('makes nothing through a link', () => {
  mkdirSync(join(place.path, 'linked'));
  writeFileSync(join(place.path, 'mine.txt'), 'mine');
  symlinkSync(join(place.path, 'mine.txt'), join(place.path, 'linked/a.csv.part'));
  expectRefusal(() => open('linked', true), 'output-changed', { field: 'out', file: 'linked' });
  expect(readFileSync(join(place.path, 'mine.txt'), 'utf8')).toBe('mine');
});
