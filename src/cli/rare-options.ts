/** Options that `--help` of a command with many leaves to `skirtgrade help <command>`, so that it fits a screen or two. */
import type { Command, Option } from 'commander';
import { Help } from 'commander';

/** By the name of a command, as fields: what most calls do without. */
const RARE: ReadonlyMap<string, readonly string[]> = new Map([
  [
    'grade',
    [
      ...['blend', 'stack', 'fractions', 'against', 'allowances', 'lines', 'margin', 'booklet'],
      ...['join', 'measures', 'measured', 'library', 'chart', 'seams', 'breaks', 'moves'],
      ...['enlarge', 'unfold'],
    ],
  ],
  ['assess', ['fractions', 'chart', 'seams']],
  ['print', ['blend', 'stack', 'fractions', 'against', 'allowances', 'margin', 'join']],
  [
    'draft',
    [
      ...['allowances', 'fractions', 'lines', 'margin', 'booklet', 'join', 'points', 'workers'],
      'drawings',
    ],
  ],
]);

/** The options of a command that its `--help` tells. */
export function usualOptions(command: Command): Option[] {
  const rare = RARE.get(command.name()) ?? [];
  return new Help()
    .visibleOptions(command)
    .filter((option) => !rare.includes(option.attributeName()));
}
