/** A line of words beside the cells of a file: a comment, or a line above the table. */
import type { Place } from '../errors';
import type { LinePart, StatementName } from './statement-words';
import { statementsIn } from './statement-words';

/** A line without its `#`, and what its parts state. */
export interface SaidLine {
  readonly text: string;
  readonly parts: readonly LinePart[];
  readonly place: Place & { readonly row: number };
}

/** A statement, and the line that it stands in. */
export interface Stated {
  readonly text: string;
  /** The statement as it stands there. */
  readonly typed: string;
  readonly place: Place;
}

/** The line with this text. */
export function saidLine(text: string, place: SaidLine['place']): SaidLine {
  return { text, parts: statementsIn(text), place };
}

/** All that lines state under a name, in their order. */
export function allStated(lines: readonly SaidLine[], name: StatementName): readonly Stated[] {
  return lines.flatMap(({ parts, place }) =>
    parts
      .filter((part) => part.name === name)
      .map(({ text, typed }): Stated => ({ text, typed, place })),
  );
}
