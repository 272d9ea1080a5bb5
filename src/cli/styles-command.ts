/** `skirtgrade styles`: the styles, how the lines of one are drawn, and every parameter of it, also as a file has it. */
import type { ParameterDefinition } from '../draft/block';
import { bareLength } from '../draft/bare-length';
import type { Setting } from '../draft/setting';
import type { StyleChoice } from '../draft/style-file';
import { readStyle } from '../draft/style-file';
import { DEFAULT_STYLE } from '../draft/default-style';
import { STYLES, defaultOf, findAskedStyle } from '../draft/styles';
import type { Style } from '../draft/styles';
import { marketValues } from '../draft/market-value';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { parameterGroups } from '../draft/parameter-groups';
import { readNamed } from './read-named';
import { isStyleFile } from './style-request';
import { wrappedParagraph } from './text-table';
import { namesReport } from './written-report';

/** The options of `styles` as commander reads them. */
export interface StylesCommandOptions extends Telling {
  readonly out?: string;
  readonly replace?: boolean;
}

/**
 * Without a name all styles are listed; with one its lines and parameters are told. With a folder their line
 * drawings are written into it; throws what writing throws.
 */
export async function stylesCommand(
  name: string | undefined,
  { out, replace, json, quiet }: StylesCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const choice = name === undefined ? undefined : chosen(name, io);
  if (out !== undefined) {
    const { styleDrawings } = await import('../files/style-drawings');
    const drawings = styleDrawings(choice === undefined ? STYLES.map(unchanged) : [choice]);
    const written = await io.write(out, drawings, { set: 'styles', replace });
    return tell(
      io,
      'styles',
      { json, quiet },
      {
        exitCode: 0,
        words: () => wrappedParagraph(`Written to ${out}: ${written.names.join(', ')}`),
        brief: () => namesReport(written),
        facts: () => writtenFacts(written),
      },
    );
  }
  const style = choice && withOwn(choice);
  return tell(
    io,
    'styles',
    { json, quiet },
    {
      exitCode: 0,
      words: () => (style === undefined ? styleList() : styleText(style) + ownText(choice, name)),
      facts: () => ({ styles: style === undefined ? STYLES.map(named) : [styleFacts(style)] }),
    },
  );
}

function unchanged(style: Style): StyleChoice {
  return { style, settings: [] };
}

/** A style by its name, or as a file has it. */
function chosen(name: string, io: Io): StyleChoice {
  if (!isStyleFile(name)) return unchanged(findAskedStyle(name, {}));
  const { text, file } = readNamed(io, name);
  return readStyle(text, file);
}

/** The style as a file changes it, so that its values are told in the place of the defaults. */
function withOwn({ style, settings }: StyleChoice): Style {
  const shown = settings.map((setting) => ({ ...setting, value: valueInUnit(style, setting) }));
  return { ...style, settings: [...style.settings, ...shown] };
}

/** A length that shows no unit has that of its file, or of the chart. */
function valueInUnit(style: Style, setting: Setting): Setting['value'] {
  const { value, unit = "in the chart's unit" } = setting;
  const bare = bareLength(style, setting);
  return bare === undefined ? value : `${bare} ${unit}`;
}

function ownText(choice: StyleChoice | undefined, file = ''): string {
  if (choice === undefined || choice.settings.length === 0) return '';
  const names = choice.settings.map(({ parameter }) => parameter).join(', ');
  return (
    '\n' +
    wrappedParagraph(
      `${file} sets ${names}. Whether a chart can have them is told by ` +
        `\`skirtgrade grade my-chart.csv --style ${file}\`.`,
    )
  );
}

function styleList(): string {
  return (
    STYLES.map(listed).join('') +
    '\n' +
    wrappedParagraph(
      `Where none is named it is ${DEFAULT_STYLE}. ` +
        '`skirtgrade styles NAME` tells how one is drawn, by hand too, and its parameters; ' +
        '`skirtgrade styles --out drawings` draws them all.',
    )
  );
}

function named({ name, description }: Style): object {
  return { name, description };
}

/** A style with its parameters, defaults as text with their units. */
function styleFacts(style: Style): object {
  return {
    ...named(style),
    parameters: style.block.parameters.map((definition) => {
      const { name, quantity, least, most, meaning } = definition;
      const { value, source } = defaultOf(style, definition);
      return { name, default: value, quantity, least, most, meaning, source };
    }),
  };
}

/** One line a style, its name padded so that the descriptions stand below each other. */
function listed({ name, description }: Style): string {
  const width = Math.max(...STYLES.map((style) => style.name.length)) + 2;
  return wrappedParagraph(`${name.padEnd(width)}${description}`, width);
}

function styleText(style: Style): string {
  const { parameters } = style.block;
  const groups = parameterGroups(parameters.map(({ name }) => name)).map(
    ({ heading, names }) =>
      `\n${heading}\n` +
      names
        .flatMap((name) => parameters.filter((definition) => definition.name === name))
        .map((definition) => parameterText(style, definition))
        .join(''),
  );
  const making = style.block.making.map(({ line, words }) =>
    wrappedParagraph(`  ${line}: ${words}`, 6),
  );
  return (
    wrappedParagraph(`${style.name}: ${style.description}`, 2) +
    `How it is drawn, by hand too:\n${making.join('')}` +
    groups.join('')
  );
}

function parameterText(style: Style, definition: ParameterDefinition): string {
  const { value, source } = defaultOf(style, definition);
  const isOwn = style.settings.some(
    ({ parameter, place }) => parameter === definition.name && place.file !== undefined,
  );
  const chart = definition.fromChart ? "; the chart's row of this name goes first" : '';
  const { quantity, least, most } = definition;
  return (
    wrappedParagraph(
      `  ${definition.name} = ${marketValues(value)}  (${quantity}, ${least} to ${most})`,
      6,
    ) +
    indented(`${definition.meaning}${chart}`) +
    indented(`${isOwn ? 'set' : 'default'}: ${source}`)
  );
}

function indented(text: string): string {
  return wrappedParagraph(`      ${text}`, 6);
}
