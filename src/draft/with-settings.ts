/** A style with more settings on top of its own. */
import type { StyleChoice } from './style-file';
import { findAskedStyle } from './styles';

/** Settings, the lines of the file that has them and its title, over a style by its name or as it was read. */
export function withSettings(
  named: string | StyleChoice,
  { settings, lines = [], title }: Pick<StyleChoice, 'settings' | 'lines' | 'title'>,
): StyleChoice {
  const choice = typeof named === 'string' ? { style: findAskedStyle(named), settings: [] } : named;
  return {
    ...choice,
    settings: [...choice.settings, ...settings],
    lines: [...(choice.lines ?? []), ...lines],
    ...(title === undefined ? {} : { title }),
  };
}
