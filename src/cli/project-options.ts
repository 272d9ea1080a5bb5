/** What a project file beside the chart says, put in the place of the options that a call leaves out. */
import { dirname, join, resolve } from 'node:path';
import type { Command, Option } from 'commander';
import { InvalidArgumentError } from 'commander';
import { DEFAULT_STYLE } from '../draft/default-style';
import { InputError } from '../errors';
import type { Io } from './io';
import { list } from './options';
import { lacksChart, takeChart } from './project-chart';
import type { Project, ProjectOption } from './project-file';
import { namesMeant } from '../table/name-match';
import { STDIN } from './read-named';
import { wrappedParagraph } from './text-table';

/** Its name, in the folder of the chart. */
export const PROJECT_FILE = 'skirt.csv';

/** The commands that take all rows that are options of theirs. */
const COMMANDS: readonly string[] = ['grade', 'print', 'page', 'check', 'assess', 'explain'];

/** Options of a call alone: how it is told, and what must not become a habit. */
const OF_CALLS: readonly string[] = [
  ...['help', 'json', 'verbose', 'quiet', 'replace', 'markdown', 'set', 'tolerance', 'zero'],
  ...['pieces', 'size', 'answered', 'hint'],
];

/** How lengths are told, and the style with what is set in it. */
const OF_STYLE: readonly string[] = ['style', 'unit', 'fractions'];

/**
 * The commands that take some rows only: a sheet may count from another size and has its own rounding,
 * and where a range goes is no place for a list of bodies or for shares.
 */
const TAKEN: ReadonlyMap<string, readonly string[]> = new Map([
  ['infer', OF_STYLE],
  ['coverage', OF_STYLE],
  ['draft', [...OF_STYLE, 'allowances', 'lines']],
]);

/** Words what is wrong with options that came from a project. */
export interface Projects {
  /** An error about an option that came from a project, with the place of its row. */
  readonly placed: (error: InputError) => InputError;
}

/** What is told before all else that a call tells. */
export interface Heading {
  text: string;
}

/** Has each command take the project beside its chart first; `heading` is given what that says. */
export function projects(program: Command, io: Io, heading: Heading): Projects {
  const places = new Map<string, ProjectOption>();
  program.hook('preAction', async (_, command) => {
    const isList = command.name() === 'styles' && command.args.length === 0;
    if (!isList && !COMMANDS.includes(command.name()) && !TAKEN.has(command.name())) return;
    const [operand] = command.args;
    const isLacking = lacksChart(command, io);
    const { pattern } = command.opts<{ readonly pattern?: string }>();
    const subject = pattern ?? (isLacking ? undefined : operand);
    // A sheet lies where its chart does.
    const path = projectBeside(command.name() === 'assess' ? operand : subject);
    if (path === undefined || !io.exists(path)) return;
    const { readProject } = await import('./project-file');
    const project = readProject(io, path, optionNames(program));
    const told = isList
      ? styleTaken(project)
      : !isOf(project, command, subject)
        ? `${path} is of ${subjectOf(project) ?? 'a chart'}, and is left out here.`
        : taken(command, project, places, isLacking);
    if (told !== '' && isTold(command)) heading.text = `${wrappedParagraph(told)}\n`;
  });
  return {
    placed: (error) => {
      const { field, ...place } = error.place;
      const row = field === undefined ? undefined : places.get(field);
      return row === undefined
        ? error
        : new InputError(error.code, { ...error.problem, place: { ...place, ...row.place } });
    },
  };
}

/** The project in the folder of a chart, or in this one; a chart of that name is none. */
function projectBeside(subject: string | undefined): string | undefined {
  if (subject === undefined) return PROJECT_FILE;
  if (subject === STDIN) return undefined;
  const folder = dirname(subject);
  const path = folder === '.' ? PROJECT_FILE : join(folder, PROJECT_FILE);
  return resolve(path) === resolve(subject) ? undefined : path;
}

/** The names that options have as fields, without those of a call alone. */
function optionNames(program: Command): readonly string[] {
  const names = program.commands
    .filter((command) => COMMANDS.includes(command.name()))
    .flatMap(({ options }) => options.map((option) => option.attributeName()));
  return [...new Set(['style', 'base', ...names])].filter((name) => !OF_CALLS.includes(name));
}

function subjectOf({ options }: Project): string | undefined {
  return (options.get('pattern') ?? options.get('chart'))?.value;
}

/** A project that names no chart is of any in its folder, but of no pattern that the call names. */
function isOf(project: Project, command: Command, subject: string | undefined): boolean {
  const own = subjectOf(project);
  if (command.name() === 'draft') return !project.options.has('pattern');
  if (subject === undefined || command.name() === 'infer') return true;
  if (own !== undefined) return resolve(own) === resolve(subject);
  return command.getOptionValueSource('pattern') === undefined;
}

/** Sets what the call leaves out, and says what. */
function taken(
  command: Command,
  project: Project,
  places: Map<string, ProjectOption>,
  isLacking: boolean,
): string {
  const { file, options, settings, lines, title } = project;
  const names = TAKEN.get(command.name());
  const told: string[] = [];
  const isGiven = options.has('pattern');
  const chart = isLacking ? takeChart(command, project) : undefined;
  if (chart !== undefined) told.push(`chart ${chart}`);
  for (const option of command.options) {
    const name = option.attributeName();
    const row = options.get(name);
    if (row === undefined || command.getOptionValueSource(name) === 'cli') continue;
    // A range goes into a folder, and a page is one file.
    if (command.name() === 'page' && name === 'out') continue;
    if ((name === 'chart' && !isGiven) || names?.includes(name) === false) continue;
    const value = parsed(option, row);
    if (value === false) continue;
    command.setOptionValueWithSource(name, value, 'config');
    places.set(name, row);
    told.push(value === true ? name : `${name} ${row.value}`);
  }
  if (optionsOf(command).includes('set')) {
    command.setOptionValueWithSource('project', { settings, lines, title }, 'config');
    // What draws a skirt calls it something.
    const isNamed = title !== undefined && optionsOf(command).includes('lines');
    told.push(
      ...(isNamed ? [`title ${title}`] : []),
      ...settings
        .filter(({ parameter }) => !isSetByCall(command, parameter))
        .map(({ parameter, value }) => `${parameter} ${value}`),
    );
  }
  return told.length === 0 ? '' : `From ${file}: ${told.join(', ')}`;
}

function optionsOf(command: Command): readonly string[] {
  return command.options.map((option) => option.attributeName());
}

/** A list of all styles says which one the skirt of this folder is in. */
function styleTaken({ file, options }: Project): string {
  const style = options.get('style')?.value;
  return options.has('pattern') ? '' : `${file} takes style ${style ?? DEFAULT_STYLE}.`;
}

function isSetByCall(command: Command, parameter: string): boolean {
  const { set = [] } = command.opts<{ readonly set?: readonly string[] }>();
  return set.some((text) => namesMeant(text.split('=')[0] ?? '', [parameter]).length > 0);
}

/** The value of a row as the option itself would read it. Throws InputError `bad-option`. */
function parsed(option: Option, row: ProjectOption): unknown {
  if (option.isBoolean()) return yesOrNo(row);
  if (option.attributeName() === 'against') return list(row.value);
  try {
    return option.parseArg === undefined
      ? row.value
      : option.parseArg(row.value, undefined as never);
  } catch (error) {
    if (!(error instanceof InvalidArgumentError)) throw error;
    throw new InputError('bad-option', {
      what: `${option.attributeName()} is not one of those there are`,
      allowed: (option.argChoices ?? []).join(', '),
      got: row.value,
      place: row.place,
    });
  }
}

/** What a row says of an option that is yes or no. Throws InputError `bad-option`. */
function yesOrNo({ value, place }: ProjectOption): boolean {
  if (/^(?:yes|true|1)$/iu.test(value)) return true;
  if (/^(?:no|false|0)$/iu.test(value)) return false;
  throw new InputError('bad-option', {
    what: 'the row says neither yes nor no',
    allowed: 'yes or no',
    got: value,
    place,
  });
}

/** A document, a handout and a list of files alone have no room for it. */
function isTold(command: Command): boolean {
  const { json, quiet, markdown } = command.opts<Record<string, unknown>>();
  return json !== true && quiet !== true && markdown !== true;
}
