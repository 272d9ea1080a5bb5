/** Drawings that show a piece in more than the sample size, or in another: those are not graded. */
import { grouped } from '../lists/grouped';
import { InputError } from '../errors';
import { refuseGrowing } from './growing-blocks';
import type { PlacedBlock } from './placed-blocks';
import type { RuleTable } from './rule-table';
import type { Labeled } from './named-size';
import { isIn, labeled } from './named-size';

/**
 * Throws InputError `dxf-malformed` for a nest, of which each size of a piece is a block of its own,
 * for pieces of one name that nothing tells apart or that only grow, and for a piece in another than
 * the sample size.
 */
export function refuseSized(
  blocks: readonly PlacedBlock[],
  table: Pick<RuleTable, 'sizes' | 'sample' | 'rules'>,
  file: string,
): void {
  const { sizes, sample } = table;
  const shown = blocks.map((block) => labeled(block, sizes));
  const groups = grouped(shown, (own) =>
    (isOneOfSizes(own, shown) ? own.stem : own.piece).toUpperCase(),
  );
  for (const same of groups.values()) {
    const [first, second] = same;
    if (first === undefined || second === undefined) continue;
    const labels = same.map(({ said, ending, block }) => said ?? ending ?? block.name);
    const isNest = new Set(labels).size === same.length && labels.every((own) => isIn(sizes, own));
    throw new InputError('dxf-malformed', {
      what: isNest
        ? `the drawing is a nest, graded already: ${first.stem} is there in ${same.length} sizes`
        : `${same.length} blocks are the piece ${first.piece}, and nothing tells them apart`,
      allowed: `one block for each piece, in the sample size ${sample}`,
      got: labels.join(', '),
      place: { file, row: second.block.row },
    });
  }
  refuseGrowing(shown, table, file);
  const other = shown.find(({ said }) => said !== undefined && !isIn([sample], said));
  if (other === undefined) return;
  throw new InputError('dxf-malformed', {
    what: `the piece ${other.piece} is in another size than the rule table counts from`,
    allowed: `the sample size ${sample}`,
    got: other.said ?? '',
    place: { file, row: other.block.row },
  });
}

/** Whether a piece is one size of others; panels numbered 1 to 6 are not, though 2 is a size. */
function isOneOfSizes({ stem, said, ending }: Labeled, shown: readonly Labeled[]): boolean {
  if (ending === undefined) return false;
  if (said !== undefined) return isIn([said], ending);
  const family = shown.filter((own) => own.stem.toUpperCase() === stem.toUpperCase());
  return family.every((own) => own.ending !== undefined || !own.isParted);
}
