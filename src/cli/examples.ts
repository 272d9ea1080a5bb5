/** What stands below the options of a command: two calls, and what they write. */
import type { Command } from 'commander';
import assess from './help/assess.txt';
import chart from './help/chart.txt';
import check from './help/check.txt';
import compare from './help/compare.txt';
import coverage from './help/coverage.txt';
import draft from './help/draft.txt';
import exercise from './help/exercise.txt';
import explain from './help/explain.txt';
import grade from './help/grade.txt';
import help from './help/help.txt';
import infer from './help/infer.txt';
import newChart from './help/new.txt';
import page from './help/page.txt';
import print from './help/print.txt';
import styles from './help/styles.txt';

/** By the name of a command: lines of at most 80 columns. */
export const EXAMPLES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    assess,
    chart,
    check,
    compare,
    coverage,
    draft,
    exercise,
    explain,
    grade,
    help,
    infer,
    new: newChart,
    page,
    print,
    styles,
  }),
);

/** Puts the examples below the help of each command that has some. */
export function addExamples(commands: readonly Command[]): void {
  for (const command of commands) {
    const text = EXAMPLES.get(command.name());
    if (text !== undefined) command.addHelpText('after', text.trimEnd());
  }
}
