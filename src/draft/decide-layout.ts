/** Decides, once for a whole range, which points its pieces have. */
import type { WalkedSize } from '../stride/walking-room';
import { strideOpening } from '../stride/walking-room';
import type { FormulaParser } from '../formula/own-formula';
import type { Block, BlockLayout, ValueDefinition } from './block';
import type { Draft } from './compile-block';
import { compileBlock } from './compile-block';
import type { ResolvedParameter } from './parameters';

/** One size of the range before it is drafted. */
export interface RangeSize {
  readonly label: string;
  /** A measurement of the chart in mm; it may throw where the chart lacks it. */
  readonly measure: (name: string) => number;
  /** What the chart tells about the walker. */
  readonly body: WalkedSize['body'];
}

/** The name under which formulas use the opening that the wanted stride needs. */
export const STRIDE_OPENING = 'stride_opening';

/** mm, what it stands for until it is known: 15 to 30 cm is usual. */
export const USUAL_OPENING = 200;

/**
 * Lays out a block for all `sizes`, the base at index `base`. The facts that the block asks for are
 * computed from its parameters alone, before any point is known. Where a parameter uses
 * `stride_opening`, the range is drafted once with a usual one to find what its sizes need. `parse` reads
 * the formulas.
 */
export function decideLayout(
  block: Block,
  parameters: readonly ResolvedParameter[],
  chartRows: readonly string[],
  sizes: readonly RangeSize[],
  base: number,
  parse: FormulaParser,
): BlockLayout {
  const draftsOf = (layout: BlockLayout): readonly Draft[] => {
    const { measurements, draft } = compileBlock(block, layout, parameters, chartRows, parse);
    const draftOf = ({ label, measure }: RangeSize, like?: Draft): Draft =>
      draft(measurements.map(measure), label, like);
    const [baseDraft] = sizes.slice(base, base + 1).map((size) => draftOf(size));
    return sizes.map((size, i) => (i === base ? baseDraft : undefined) ?? draftOf(size, baseDraft));
  };
  const atBase = (drafts: readonly Draft[], name: string): number =>
    drafts[base]?.valueOf(name) ?? NaN;
  const layoutWith = (opening: number): BlockLayout => {
    const values: readonly ValueDefinition[] = [
      { name: STRIDE_OPENING, quantity: 'length', formula: `${opening} mm` },
    ];
    const drafts = draftsOf({ pieces: [], truing: [], derived: [], seams: [], values });
    // A row of the chart that no parameter uses is in no draft without points.
    const valueIn = (i: number, name: string): number => {
      const value = drafts[i]?.valueOf(name) ?? NaN;
      if (!Number.isNaN(value) || !chartRows.includes(name)) return value;
      return sizes[i]?.measure(name) ?? NaN;
    };
    const layout = block.layout({
      atBase: (name) => atBase(drafts, name),
      span: (name) => {
        const values = sizes.map((_, i) => valueIn(i, name));
        return [Math.min(...values), Math.max(...values)];
      },
      least: (of) => Math.min(...sizes.map((_, i) => of((name) => valueIn(i, name)))),
      alwaysZero: (name) => drafts.every(({ valueOf }) => valueOf(name) === 0),
    });
    return { ...layout, values: [...(layout.values ?? []), ...values] };
  };

  const usual = layoutWith(USUAL_OPENING);
  if (!parameters.some(({ formula }) => formula?.names.includes(STRIDE_OPENING))) return usual;
  const drafts = draftsOf(panelsAlone(usual));
  return layoutWith(
    strideOpening(
      drafts.map(({ parameters: own, pieces }, i) => ({
        body: sizes[i]?.body ?? new Map(),
        parameters: own,
        pieces,
      })),
      { step: atBase(drafts, 'vent_step'), least: atBase(drafts, 'vent_least') },
    ),
  );
}

/** A layout without the pieces that are made from its panels, which nobody walks in. */
export function panelsAlone(layout: BlockLayout): BlockLayout {
  return { ...layout, derived: [] };
}
