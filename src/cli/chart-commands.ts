/** The commands about charts and styles, from which a pattern is drafted: check, chart, styles. */
import type { Command } from 'commander';
import type { AddCommands } from './options';
import {
  againstOption,
  jsonOption,
  neededChart,
  replaceOption,
  unitOption,
  withTelling,
} from './options';
import type { StylesCommandOptions } from './styles-command';

/** Adds `check`, `chart` and `styles`. */
export const addChartCommands: AddCommands = (program, io, end) => {
  withTelling(program.command('check'), 'only the verdict')
    .summary("hold a chart's increments against published tables")
    .description("compare a chart's increments with published body-measurement tables")
    .argument('[chart.csv]', 'body measurements')
    .addOption(againstOption())
    .addOption(unitOption())
    .option('--fractions', 'show inches as fractions')
    .action(async (chart: string | undefined, options: { against: string[] }, command: Command) => {
      const { checkCommand } = await import('./chart-work');
      end(checkCommand(neededChart(chart, command), options, io));
    });
  program
    .command('chart')
    .description('print a chart in canonical form: one measurement a row')
    .argument('<chart.csv>', 'body measurements, in either layout')
    .addOption(unitOption())
    .addOption(jsonOption())
    .action(async (chart: string, options: object) => {
      const { chartCommand } = await import('./chart-work');
      end(chartCommand(chart, options, io));
    });
  program
    .command('styles')
    .description('list the styles, or every parameter of one style')
    .argument('[name]', 'a style')
    .option('--out <folder>', 'write a line drawing of each style instead')
    .addOption(replaceOption())
    .addOption(jsonOption())
    .action(async (name: string | undefined, options: StylesCommandOptions) => {
      const { stylesCommand } = await import('./styles-command');
      end(await stylesCommand(name, options, io));
    });
};
