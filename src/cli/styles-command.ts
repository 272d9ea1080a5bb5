/** `skirtgrade styles`: the styles, how the lines of one are drawn, and every parameter of it. */
import { STYLES, defaultOf, findStyle } from '../draft/styles';
import type { Style } from '../draft/styles';
import { marketValues } from '../draft/market-value';
import type { ExitCode, Io } from './io';
import { wrappedParagraph } from './text-table';

/** The options of `styles` as commander reads them. */
export interface StylesCommandOptions {
  readonly out?: string;
  readonly replace?: boolean;
}

/**
 * Without a name all styles are listed, each with its lines and parameters. With a folder their line
 * drawings are written into it; throws what writing throws.
 */
export async function stylesCommand(
  name: string | undefined,
  { out, replace }: StylesCommandOptions,
  io: Io,
): Promise<ExitCode> {
  if (out !== undefined) {
    const { styleDrawings } = await import('../files/style-drawings');
    const drawings = styleDrawings(name === undefined ? STYLES : [findStyle(name)]);
    await io.write(out, drawings, { set: 'styles', replace });
    io.out(wrappedParagraph(`Written to ${out}: ${drawings.map((file) => file.name).join(', ')}`));
    return 0;
  }
  if (name === undefined) io.out(`${STYLES.map(listed).join('')}\n`);
  const styles = name === undefined ? STYLES : [findStyle(name)];
  io.out(styles.map(styleText).join('\n'));
  return 0;
}

/** One line a style, its name padded so that the descriptions stand below each other. */
function listed({ name, description }: Style): string {
  const width = Math.max(...STYLES.map((style) => style.name.length)) + 2;
  return wrappedParagraph(`${name.padEnd(width)}${description}`, width);
}

function styleText(style: Style): string {
  const parameters = style.block.parameters.map((definition) => {
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
  });
  const making = style.block.making.map(({ line, words }) =>
    wrappedParagraph(`  ${line}: ${words}`, 6),
  );
  return (
    wrappedParagraph(`${style.name}: ${style.description}`, 2) +
    `How it is drawn, by hand too:\n${making.join('')}` +
    `Parameters:\n${parameters.join('')}`
  );
}

function indented(text: string): string {
  return wrappedParagraph(`      ${text}`, 6);
}
