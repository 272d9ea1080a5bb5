/** The commands about charts and styles, from which a pattern is drafted: new, check, chart, styles. */
import type { Command } from 'commander';
import { Option } from 'commander';
import type { NewCommandOptions } from './new-command';
import type { AddCommands } from './options';
import {
  EVERY_FINDING,
  FILES_ALONE,
  againstOption,
  list,
  neededChart,
  replaceOption,
  unitOption,
  unitsOf,
  withTelling,
} from './options';
import type { StylesCommandOptions } from './styles-command';

/** Adds `new`, `check`, `chart` and `styles`. */
export const addChartCommands: AddCommands = (program, io, end) => {
  withTelling(
    program
      .command('new')
      .description('write a chart to fill in, or one with the bodies of a published table')
      .argument('[chart.csv]', 'the file to write (my-chart.csv)')
      .option('--title <title>', 'name of the skirt (none)')
      .addOption(
        unitsOf(new Option('--unit <unit>', "unit of the tape (the table's)"), ['in', 'cm']),
      )
      .option('--sizes <a,b,c>', "labels of the sizes (the table's)", list)
      .option('--like <table>', 'begin with a published table, such as jis-l-4005')
      .option('--replace', 'also replace a file that is there'),
    { quiet: FILES_ALONE },
  ).action(async (chart: string | undefined, options: NewCommandOptions) => {
    const { newCommand } = await import('./new-command');
    end(await newCommand(chart, options, io));
  });
  withTelling(
    program
      .command('check')
      .summary("hold a chart's increments against published tables")
      .description("compare a chart's increments with published body-measurement tables")
      .argument('[chart.csv]', 'body measurements')
      .addOption(againstOption())
      .addOption(unitOption())
      .option('--fractions', 'inches as fractions (as they are typed)'),
    { verbose: EVERY_FINDING, quiet: 'tell only the verdict' },
  ).action(async (chart: string | undefined, options: { against: string[] }, command: Command) => {
    const { checkCommand } = await import('./check-command');
    end(checkCommand(neededChart(chart, command), options, io));
  });
  withTelling(
    program
      .command('chart')
      .description('print a chart in canonical form: one measurement a row')
      .argument('<chart.csv>', 'body measurements, in either layout')
      .addOption(unitOption()),
  ).action(async (chart: string, options: object) => {
    const { chartCommand } = await import('./chart-command');
    end(chartCommand(chart, options, io));
  });
  withTelling(
    program
      .command('styles')
      .description('list the styles, or every parameter of one style')
      .argument('[name|style.csv]', 'a style, or a file of your own')
      .option('--out <folder>', 'write a line drawing of each style instead')
      .addOption(replaceOption()),
    { quiet: FILES_ALONE },
  ).action(async (name: string | undefined, options: StylesCommandOptions) => {
    const { stylesCommand } = await import('./styles-command');
    end(await stylesCommand(name, options, io));
  });
};
