/** The `--set` options of a call: parameters of the style with their values. */
import { InputError } from '../errors';

/** `hem_taper=1 in` as name and value. Throws `bad-option` or `parameter-twice`. */
export function settingsOf(texts: readonly string[]): Record<string, string> {
  const settings = new Map<string, string>();
  for (const text of texts) {
    const match = /^\s*([A-Za-z_]\w*)\s*=(.*)$/s.exec(text);
    const [, name = '', value = ''] = match ?? [];
    if (match === null)
      throw new InputError('bad-option', {
        what: 'a setting is a parameter, an equals sign and a value or formula',
        allowed: 'such as hem_taper="1 1/2 in"',
        got: text,
        place: { option: '--set' },
      });
    if (settings.has(name))
      throw new InputError('parameter-twice', {
        what: 'the parameter is set twice',
        allowed: 'one --set a parameter',
        got: name,
        place: { option: '--set', parameter: name },
      });
    settings.set(name, value.trim());
  }
  return Object.fromEntries(settings);
}
