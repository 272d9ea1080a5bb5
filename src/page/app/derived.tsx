/** The rule of a point derived step by step, as on a board. */
import type { BoardLine } from '../../study/explain/board';
import type { Pattern } from '../wish';
import type { Engine } from './engine-client';
import { Table } from './table';
import { useTold } from './use-told';

/** Derived as soon as it is shown; `point` is `piece.point`. */
export function Derived({
  engine,
  pattern,
  point,
}: {
  readonly engine: Engine;
  readonly pattern: Pattern;
  readonly point: string;
}) {
  const { told, refused, wish } = useTold(engine, { kind: 'derive', pattern, point });
  if (refused !== undefined) return <p class="trouble">{refused.message}</p>;
  if (told === undefined || wish?.point !== point) return <p role="status">Deriving\u2026</p>;
  return (
    <div class="board">
      {told.map((line, i) => (
        <Line line={line} heading={headingAbove(told, i)} />
      ))}
    </div>
  );
}

/** By which a table is called. */
function headingAbove(lines: readonly BoardLine[], i: number): string {
  const above = lines.slice(0, i).findLast(({ kind }) => kind === 'heading');
  return above?.kind === 'heading' ? above.words : '';
}

function Line({ line, heading }: { readonly line: BoardLine; readonly heading: string }) {
  if (line.kind === 'heading') return <p class="heading">{line.words}</p>;
  if (line.kind === 'formula') return <p class="formula">{line.words}</p>;
  if (line.kind === 'words') return <p>{line.words}</p>;
  const [heads = [], ...rows] = line.rows;
  return <Table caption={`${heading}: ${heads.join(', ')}`} heads={heads} rows={rows} />;
}
