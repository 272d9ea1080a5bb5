/** What a streamed run is asked for, as plain values that a worker can be handed. */
import type { BodyRequest } from '../../bodies/draft-bodies';
import { readStreamedList } from '../../bodies/streamed-list';
import { readStyle } from '../../draft/style-file';
import { withSettings } from '../../draft/with-settings';
import type { DrawingKind } from '../../files/streamed-drawings';
import type { StreamedWork } from '../../files/streamed-tables';
import { streamedWork } from '../../files/streamed-tables';
import type { NamedText } from '../../jobs/requests';
import type { StyleOptions } from '../style-request';

/** All that the bytes of a run hang on, but for the list itself. */
export interface StreamOrder {
  /** Name of the list for messages. */
  readonly file: string;
  /** Its beginning, as far as the header. */
  readonly head: string;
  /** Where its bodies begin: in bytes, and the row. */
  readonly begin: { readonly offset: number; readonly row: number };
  /** A style by its name, or a style file. */
  readonly style: string | NamedText;
  /** What a project file sets on top of it. */
  readonly project: StyleOptions['project'];
  readonly request: Omit<BodyRequest, 'style'>;
  readonly anonymous: boolean;
  readonly points: boolean;
  readonly drawings: readonly DrawingKind[];
}

/** Makes the work of an order. Throws InputError for what cannot be used. */
export function workOf({
  file,
  head,
  style,
  project,
  request,
  ...tables
}: StreamOrder): StreamedWork {
  const list = readStreamedList(head, file);
  const { unit = list.columns.unit, fractions = false } = request;
  const named = typeof style === 'string' ? style : readStyle(style.text, style.file);
  const chosen = project === undefined ? named : withSettings(named, project);
  return streamedWork(
    list,
    { ...request, style: chosen },
    { ...tables, display: { unit, fractions, fractionTables: fractions } },
  );
}
