/** The lines at which a skirt is lengthened or shortened: clear of all that must keep its shape. */
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { MarkedLine, Piece } from '../pattern/piece';
import { panelsOf, pointOf } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { Zip } from '../pattern/zip';
import { zipEnd, zipOf } from '../pattern/zip';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** mm. A line nearer to a dart, the hip line or a vent cannot be cut along without cutting into it. */
const LEAST = 5;

const KINDS = [
  {
    mark: 'length-line',
    said: 'the line to lengthen or shorten at',
    between: 'between hip line, darts and zip, and the vent or hem',
  },
  {
    mark: 'hip-depth-line',
    said: 'the line to lengthen or shorten the hip depth at',
    between: 'between the tips of the darts and the hip line',
  },
] as const;

/** A finding a size for each line; for one that was left out, one finding for the range. */
export function checkLengthLines(range: GradedPattern, display: LengthDisplay): Finding[] {
  return KINDS.flatMap((kind): Finding[] => {
    const isDrawn = range.plans.some(({ marks }) => marks.some(({ name }) => name === kind.mark));
    const common = {
      check: 'length-line',
      piece: '',
      subject: kind.mark,
      quantity: 'length' as const,
      source: "the engine's own rule: square to the grain, clear of darts, hip line, vent and hem",
    };
    if (!isDrawn)
      return [
        found({
          ...common,
          severity: 'note',
          message:
            `${kind.said} is left out: there is no place ${kind.between} ` +
            'that is clear in every size',
        }),
      ];
    return range.sizes.map((size) => {
      const measured = clearance(size, kind.mark);
      const held = measured >= LEAST - SAME_PLACE;
      return {
        ...common,
        severity: held ? 'ok' : 'warning',
        size: size.label,
        measured,
        expected: LEAST,
        message:
          `${kind.said}, ${kind.between}, is ` +
          (measured < 0
            ? `${showLength(-measured, display)} beyond one of them`
            : `${showLength(measured, display)} clear of the nearer`),
      };
    });
  });
}

/** mm from the line to the nearest level that it must stay clear of; less than zero beyond one. */
function clearance({ pieces, parameters }: SizedPattern, mark: MarkedLine['name']): number {
  const zip = zipOf(pieces, parameters);
  const free = panelsOf(pieces).flatMap((panel) =>
    panel.plan.marks
      .filter(({ name }) => name === mark)
      .flatMap(({ through }) =>
        through.flatMap((name) => {
          const { y } = pointOf(panel, name);
          const [above, below] = mark === 'length-line' ? belowHip(panel, zip) : aboveHip(panel);
          return [y - above, below - y];
        }),
      ),
  );
  return Math.min(...free);
}

function belowHip(panel: Piece, zip: Zip | undefined): readonly [above: number, below: number] {
  const { index, zip: opened } = panel.plan;
  const end = zip && opened ? pointOf(panel, opened.top).y + zipEnd(zip) : -Infinity;
  const ends = ['vent_top', 'center_hem', 'side_hem'].filter((name) => index.has(name));
  const levels = ends.map((name) => pointOf(panel, name).y);
  const hip = pointOf(panel, 'center_hip').y;
  return [Math.max(hip, end, ...tipLevels(panel)), Math.min(...levels)];
}

function aboveHip(panel: Piece): readonly [above: number, below: number] {
  const hip = ['center_hip', 'side_hip'].map((name) => pointOf(panel, name).y);
  return [Math.max(-Infinity, ...tipLevels(panel)), Math.min(...hip)];
}

function tipLevels(panel: Piece): readonly number[] {
  return panel.plan.darts.map(({ tip }) => pointOf(panel, tip).y);
}
