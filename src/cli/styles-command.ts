/** `skirtgrade styles`: the styles, and every parameter of one. */
import { STYLES, defaultOf, findStyle } from '../draft/styles';
import type { Style } from '../draft/styles';
import type { Io } from './io';
import type { ExitCode } from './main';
import { paragraph, textTable } from './text-table';

/** Without a name all styles are listed, each with its parameters. */
export function stylesCommand(name: string | undefined, io: Io): ExitCode {
  if (name === undefined)
    io.out(
      `${textTable(
        STYLES.map((style) => [style.name, style.description]),
        2,
      )}\n`,
    );
  const styles = name === undefined ? STYLES : [findStyle(name)];
  io.out(styles.map(styleText).join('\n'));
  return 0;
}

function styleText(style: Style): string {
  const parameters = style.block.parameters.map((definition) => {
    const { value, source } = defaultOf(style, definition);
    const chart = definition.fromChart ? "; the chart's row of this name goes first" : '';
    return (
      `  ${definition.name} = ${value}  (${definition.quantity}, ` +
      `${definition.least} to ${definition.most})\n` +
      indented(`${definition.meaning}${chart}`) +
      indented(`default: ${source}`)
    );
  });
  return `${style.name}: ${style.description}\n${parameters.join('')}`;
}

function indented(text: string): string {
  return paragraph(`      ${text}`, 6);
}
