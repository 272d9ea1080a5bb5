import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/index';
import { CANONICAL } from '../chart/charts';

describe('the title of a drafted skirt', () => {
  const titled = (line: string): string =>
    gradeChart({ chart: `${line}\n${CANONICAL}`, base: '12', style: 'pencil' }).title;

  it.each([
    ['# title: Quill skirt', 'Quill skirt'],
    ['# title,Quill skirt', 'Quill skirt'],
    ['title,Quill skirt', 'Quill skirt'],
    ['title: Quill skirt,,,', 'Quill skirt'],
    ['Title,"Quill, a skirt"', 'Quill, a skirt'],
    ['# title: Quill skirt; base: 12', 'Quill skirt'],
    ['# ours', 'pencil skirt'],
  ])('of "%s" is "%s"', (line, title) => {
    expect(titled(line)).toBe(title);
  });
});
