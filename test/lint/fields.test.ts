/** The library says fields, and the command line alone says options. */
import { describe, expect, it } from 'vitest';
import { optionMessage, optionOf } from '../../src/cli/option-words';
import { InputError } from '../../src/errors';
import { literalsIn, literalsOf, sourceFiles } from './sources';

const OPTION = /--[a-z]/u;

describe('options', () => {
  it('stand in no text of the library', () => {
    const library = sourceFiles().filter((file) => !file.startsWith('cli/'));
    expect(library.length).toBeGreaterThan(100);
    const said = library.filter((file) => literalsIn(file).some((text) => OPTION.test(text)));
    expect(said).toEqual([]);
  });

  it('are seen in every kind of text, and not in comments', () => {
    const kinds = ["'--base'", '"--base"', '`--base`', '`${1} --base`', '`${1} --base ${2}`'];
    for (const kind of kinds)
      expect(literalsOf(`const a = ${kind};`).some((text) => OPTION.test(text))).toBe(true);
    expect(literalsOf("/** --base */ import '--base';")).toEqual([]);
  });

  it('are what the command line makes of fields', () => {
    expect(optionOf('base')).toBe('--base');
    expect(optionOf('seamPairs')).toBe('--seam-pairs');
    const error = new InputError('base-missing', {
      what: 'nothing says the base',
      allowed: 'a line of the sheet',
      orField: 'base',
      got: '',
      place: { field: 'pattern', file: 'a.csv' },
    });
    expect(error.place).toEqual({ field: 'pattern', file: 'a.csv' });
    expect(error.message).toBe(
      'pattern, a.csv: nothing says the base. Allowed: a line of the sheet, or base. Got: nothing.',
    );
    expect(optionMessage(error)).toBe(
      '--pattern, a.csv: nothing says the base. ' +
        'Allowed: a line of the sheet, or --base. Got: nothing.',
    );
  });

  it('are alone what would mend it where nothing else is allowed', () => {
    const error = new InputError('base-missing', { what: 'no base', orField: 'base' });
    expect(error.message).toBe('no base. Allowed: base.');
  });
});
