/** The cloth to buy as files: the table of all sizes, and a lay of the base size. */
import { cutPieces } from '../pattern/cut-pieces';
import type { GradeResult } from '../jobs/grade-chart';
import { laySheet } from '../render/lay-sheet';
import { fabricNeedsTable } from './lay-table';
import { svg } from '../render/svg';
import type { ResultFile } from './result-files';
import { drawingOf } from './result-files';
import type { LengthDisplay } from '../units';
import type { ClothWidth } from '../fabric/cloth';
import { CLOTH_NAMES, USUAL_NAP } from '../fabric/cloth';
import type { CutSize } from '../fabric/fabric-needs';
import { SPARE, fabricNeeds, leastNeed } from '../fabric/fabric-needs';
import { isLay } from '../fabric/lay';

/** The usual width of skirt cloth, which the lays are drawn on. */
const DRAWN: Readonly<Record<'metric' | 'inch', ClothWidth>> = {
  metric: { value: 140, unit: 'cm' },
  inch: { value: 54, unit: 'in' },
};

/** What is laid on cloth. */
export interface FabricJob {
  readonly title: string;
  readonly display: LengthDisplay;
  /** The base size alone, which is drawn. */
  readonly base: readonly CutSize[];
  /** The sizes of the table. */
  readonly shown: readonly CutSize[];
}

/** The same files of a drafted skirt. */
export function fabricFiles(result: GradeResult): readonly ResultFile[] {
  const { range, shown, display } = result;
  const sized = ({ label, pieces, parameters }: (typeof shown)[number]): CutSize => ({
    label,
    pieces: cutPieces(pieces, parameters),
  });
  return layFiles({
    title: drawingOf(result).title,
    display,
    base: range.sizes.filter(({ label }) => label === range.base).map(sized),
    shown: shown.map(sized),
  });
}

/**
 * `fabric.csv` for the sizes shown, and `lay-<cloth>.svg` for each cloth: the base size, the shell
 * with a nap and the others without, folded unless that takes more. A cloth that the base does not
 * go on has no drawing.
 */
export function layFiles({ title, display, base, shown }: FabricJob): readonly ResultFile[] {
  const width = DRAWN[display.unit === 'in' ? 'inch' : 'metric'];
  const drawn = fabricNeeds(base, { widths: [width] });
  const lays = CLOTH_NAMES.flatMap((cloth): readonly ResultFile[] => {
    const choices = drawn
      .filter((need) => need.cloth === cloth && need.nap === USUAL_NAP[cloth])
      .flatMap(({ sizes }) => sizes);
    const need = leastNeed(choices);
    if (need?.buy === undefined || !isLay(need.lay)) return [];
    const { lay, buy, label: size } = need;
    return [
      {
        name: `lay-${cloth}.svg`,
        text: svg(laySheet({ title, size, cloth, width, lay, buy, spare: SPARE })),
      },
    ];
  });
  return [{ name: 'fabric.csv', text: fabricNeedsTable(fabricNeeds(shown)) }, ...lays];
}
