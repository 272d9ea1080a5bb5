import { describe, expect, it } from 'vitest';
import { readStyle } from '../../src/draft/style-file';
import { imprintDay, imprintWords } from '../../src/table/imprint';
import { expectRefusal } from '../expect-refusal';
import { CANONICAL } from '../chart/charts';
import { gradeLazily } from '../graded';

describe('the title of a drafted skirt', () => {
  const titled = (line: string): string =>
    gradeLazily({ chart: `${line}\n${CANONICAL}`, base: '12', style: 'pencil' }).title;

  it.each([
    ['# title: Quill skirt', 'Quill skirt'],
    ['# title,Quill skirt', 'Quill skirt'],
    ['title,Quill skirt', 'Quill skirt'],
    ['title: Quill skirt,,,', 'Quill skirt'],
    ['Title,"Quill, a skirt"', 'Quill, a skirt'],
    ['# title: Quill skirt; base: 12', 'Quill skirt'],
    ['Quill skirt', 'Quill skirt'],
    ['Sorrel,,,', 'Sorrel'],
    ['"Quill, the long one",,', 'Quill, the long one'],
    ['Юбка осенняя', 'Юбка осенняя'],
    ['Quill 2', 'Quill 2'],
    ['# Quill skirt', 'Quill skirt'],
    ['Sorrel\n# title: Quill skirt', 'Quill skirt'],
    ['# ours', 'pencil skirt'],
    ['Skirts, spring', 'pencil skirt'],
    ['Size chart', 'pencil skirt'],
    ['Body measurements of autumn', 'pencil skirt'],
    ['Taken with shoes on.', 'pencil skirt'],
    ['base 12', 'pencil skirt'],
    ['Customer: Ann', 'pencil skirt'],
    ['# designer: Ann Lind\nQuill', 'pencil skirt'],
    ['x'.repeat(101), 'pencil skirt'],
  ])('of "%s" is "%s"', (line, title) => {
    expect(titled(line)).toBe(title);
  });
});

describe('what a cover tells of the design', () => {
  const stated = (chart: string, style = '# based on: pencil\nparameter,value\nhip_ease,2 in\n') =>
    gradeLazily({
      chart: `${chart}\n${CANONICAL}`,
      base: '12',
      style: readStyle(style, 'style.csv'),
    }).imprint;

  it('is what the chart and the style file state', () => {
    expect(
      stated(
        '# designer: Ann Lind, Bo & Co. (studio)\nversion,2.1',
        '# date: 2026-03-01\n# copyright: 2026\nparameter,value\nhip_ease,2 in\n',
      ),
    ).toEqual({
      designer: 'Ann Lind, Bo & Co. (studio)',
      version: '2.1',
      date: '2026-03-01',
      copyright: '2026',
    });
  });

  it('is nothing where no file states it, not even the day of today', () => {
    expect(stated('# version:')).toEqual({});
    expect(imprintWords({})).toBe('');
    expect(imprintDay({})).toBeUndefined();
  });

  it.each([
    [{ designer: 'Ann', version: '2' }, 'Design: Ann · Version 2'],
    [{ designer: 'Ann', copyright: '2026' }, 'Design: Ann · © 2026 Ann'],
    [{ date: 'March 2026', copyright: '2026 Bo' }, 'March 2026 · © 2026 Bo'],
  ])('is told in words: %j', (imprint, words) => {
    expect(imprintWords(imprint)).toBe(words);
  });

  it.each([
    ['2026-03-01', '2026-03-01T00:00:00.000Z'],
    ['2026-02-30', undefined],
    ['March 2026', undefined],
  ])('has a day where its date is one: %s', (date, day) => {
    expect(imprintDay({ date })?.toISOString()).toBe(day);
  });

  it('is refused where two files disagree', () => {
    expectRefusal(
      () => stated('# version: 2', '# version: 3\nparameter,value\nhip_ease,2 in\n'),
      'sheet-malformed',
      { file: 'style.csv', row: 1 },
      'version',
    );
  });
});
