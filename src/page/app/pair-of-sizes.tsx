/** Two sizes laid over each other, with what lies between them in color and at the corners in numbers. */
import { netPath, pointAt } from '../outline';
import type { Pair } from '../state';
import type { PieceView, SkirtView } from '../wish';
import { showNumber } from '../../units';

/** mm. Corners that are nearer than this need no number. No tolerance: of what is shown. */
const TOLD_FROM = 0.5;
const TYPE = 11;

/** One piece in both sizes. */
export function PairOfSizes({
  piece,
  view,
  pair,
}: {
  readonly piece: PieceView;
  readonly view: Pick<SkirtView, 'sizes' | 'display'>;
  readonly pair: Pair;
}) {
  const [smaller, larger] = [pair.smaller, pair.larger].map(
    (label) => piece.sizes[view.sizes.indexOf(label)]?.coordinates ?? [],
  ) as [readonly number[], readonly number[]];
  const paths = [netPath(piece, smaller), netPath(piece, larger)] as const;
  return (
    <g class="pair">
      <path class="difference" fill-rule="evenodd" d={paths.join('')} />
      <path class="net alone smaller" data-size={pair.smaller} d={paths[0]} />
      <path class="net alone larger" data-size={pair.larger} d={paths[1]} />
      {piece.points.map(({ name, handle }, i) => {
        if (handle) return null;
        const [from, to] = [pointAt(smaller, i), pointAt(larger, i)];
        const apart = Math.hypot(to.x - from.x, to.y - from.y);
        if (apart < TOLD_FROM) return null;
        return (
          <>
            <path class="apart" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
            <text class="apart" x={to.x} y={to.y - TYPE / 2} font-size={TYPE} data-apart={name}>
              {showNumber(apart, view.display)}
            </text>
          </>
        );
      })}
    </g>
  );
}
