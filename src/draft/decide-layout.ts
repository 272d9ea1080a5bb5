/** Decides, once for a whole range, which points its pieces have. */
import type { Block, BlockLayout } from './block';
import { compileBlock } from './compile-block';
import type { ResolvedParameter } from './parameters';

/**
 * `bodyOf` gives the base size's measurements by name, in mm. The facts that the block asks for are
 * computed from its parameters alone, before any point is known.
 */
export function decideLayout(
  block: Block,
  parameters: readonly ResolvedParameter[],
  chartRows: readonly string[],
  bodyOf: (measurement: string) => number,
  base: string,
): BlockLayout {
  const none: BlockLayout = { pieces: [], truing: [], derived: [] };
  const drafter = compileBlock(block, none, parameters, chartRows);
  const draft = drafter.draft(drafter.measurements.map(bodyOf), base);
  return block.layout({
    atBase: draft.valueOf,
    alwaysZero: (name) => {
      const parameter = parameters.find(({ definition }) => definition.name === name);
      return parameter?.formula?.names.length === 0 && draft.valueOf(name) === 0;
    },
  });
}
