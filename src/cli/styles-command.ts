/** `skirtgrade styles`: the styles, how the lines of one are drawn, and every parameter of it. */
import type { ParameterDefinition } from '../draft/block';
import { STYLES, defaultOf, findStyle } from '../draft/styles';
import type { Style } from '../draft/styles';
import { marketValues } from '../draft/market-value';
import type { ExitCode, Io } from './io';
import type { AsDocument } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { parameterGroups } from '../draft/parameter-groups';
import { wrappedParagraph } from './text-table';

/** The options of `styles` as commander reads them. */
export interface StylesCommandOptions extends AsDocument {
  readonly out?: string;
  readonly replace?: boolean;
}

/**
 * Without a name all styles are listed; with one its lines and parameters are told. With a folder their line
 * drawings are written into it; throws what writing throws.
 */
export async function stylesCommand(
  name: string | undefined,
  { out, replace, json }: StylesCommandOptions,
  io: Io,
): Promise<ExitCode> {
  if (out !== undefined) {
    const { styleDrawings } = await import('../files/style-drawings');
    const drawings = styleDrawings(name === undefined ? STYLES : [findStyle(name)]);
    const written = await io.write(out, drawings, { set: 'styles', replace });
    return tell(io, 'styles', json, {
      exitCode: 0,
      words: () => wrappedParagraph(`Written to ${out}: ${written.names.join(', ')}`),
      facts: () => writtenFacts(written),
    });
  }
  const style = name === undefined ? undefined : findStyle(name);
  return tell(io, 'styles', json, {
    exitCode: 0,
    words: () => (style === undefined ? styleList() : styleText(style)),
    facts: () => ({ styles: style === undefined ? STYLES.map(named) : [styleFacts(style)] }),
  });
}

function styleList(): string {
  return (
    STYLES.map(listed).join('') +
    '\n' +
    wrappedParagraph(
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
  const chart = definition.fromChart ? "; the chart's row of this name goes first" : '';
  const { quantity, least, most } = definition;
  return (
    wrappedParagraph(
      `  ${definition.name} = ${marketValues(value)}  (${quantity}, ${least} to ${most})`,
      6,
    ) +
    indented(`${definition.meaning}${chart}`) +
    indented(`default: ${source}`)
  );
}

function indented(text: string): string {
  return wrappedParagraph(`      ${text}`, 6);
}
