/** A style with more settings on top of its own. */
import type { StyleChoice } from './style-file';
import { findStyle } from './styles';

/** Settings and the lines of the file that has them, over a style by its name or as it was read. */
export function withSettings(
  named: string | StyleChoice,
  { settings, lines = [] }: Pick<StyleChoice, 'settings' | 'lines'>,
): StyleChoice {
  const choice = typeof named === 'string' ? { style: findStyle(named), settings: [] } : named;
  return {
    ...choice,
    settings: [...choice.settings, ...settings],
    lines: [...(choice.lines ?? []), ...lines],
  };
}
