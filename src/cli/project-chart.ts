/** The chart of a project in the place of the one that a call leaves out. */
import type { Command } from 'commander';
import { InputError } from '../errors';
import type { Io } from './io';
import type { Project } from './project-file';

/** The commands whose first file is a chart. */
const OF_CHARTS: readonly string[] = [
  ...['grade', 'print', 'page', 'check', 'assess', 'explain', 'coverage'],
];

/** Whether a call leaves its chart out: a sheet or a point may stand first then. */
export function lacksChart(command: Command, io: Pick<Io, 'exists'>): boolean {
  const { args } = command;
  const [first] = args;
  if (!OF_CHARTS.includes(command.name())) return false;
  if (command.opts<{ readonly pattern?: string }>().pattern !== undefined) return false;
  if (first === undefined) return true;
  if (command.name() === 'assess') return args.length === 1;
  return command.name() === 'explain' && args.length === 1 && !io.exists(first);
}

/**
 * Sets the chart of a project before the operands of a call that leaves it out, and gives its path;
 * undefined where the project is of a pattern that is graded. Throws InputError `bad-option` for a project
 * that has none.
 */
export function takeChart(command: Command, { file, options }: Project): string | undefined {
  const name = command.name();
  const [chart, pattern] = [options.get('chart'), options.get('pattern')];
  if (pattern !== undefined) {
    if (name === 'grade' || name === 'assess') return undefined;
    throw new InputError('bad-option', {
      what: `the project here is of the pattern ${pattern.value}, and ${name} takes a chart`,
      allowed: `skirtgrade ${name} <chart.csv>; or skirtgrade grade, which takes the pattern`,
      place: pattern.place,
    });
  }
  if (chart === undefined) {
    throw new InputError('bad-option', {
      what: `the project here names no chart, and neither does the call`,
      allowed: `skirtgrade ${name} <chart.csv>, or a row such as chart,my-chart.csv`,
      place: { file },
    });
  }
  command.processedArgs = [chart.value, ...command.args];
  return chart.value;
}
