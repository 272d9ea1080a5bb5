/** What the command line makes of the fields that the library says. */
import { describe, expect, it } from 'vitest';
import { optionMessage, optionOf } from '../../src/cli/option-words';
import { InputError } from '../../src/errors';

describe('options', () => {
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
