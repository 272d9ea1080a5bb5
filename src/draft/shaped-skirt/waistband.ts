/**
 * The straight waistband: one strip along the grain, folded to double height, open at center back.
 *
 * It is as long as the finished waist. The edge of the skirt is longer by `band_ease`, which is eased
 * into it evenly all round, so each notch stands at the same share of the band as its seam or dart does of the edge.
 */
import type { Point } from '../../geometry/point';
import { point } from '../../geometry/point';
import type { Edge } from '../../pattern/piece';
import { pieceNamed } from '../../pattern/piece';
import { skirtPlan } from '../skirt-traits';
import { waistStretches } from '../../pattern/stretches';
import type { BlockPiece, DerivedPiece, ValueDefinition } from '../block';

/** From center back round to center back, without the underlap. */
export const BAND_LENGTH: ValueDefinition = {
  name: 'band_length',
  quantity: 'length',
  formula: 'waist_girth + waist_ease',
};

/**
 * The band for a half front and a half back. Seen from outside it lies as it is worn, its lower
 * edge on the skirt: x runs from center back over the wearer's right side (left over right at the
 * opening, hence the underlap on the right), y down from the edge that is turned inside.
 */
export function waistband(front: BlockPiece, back: BlockPiece): DerivedPiece {
  const notches = notchNames(front, back);
  return {
    plan: skirtPlan({
      name: 'waistband',
      part: 'waistband',
      cuttings: [
        { cloth: 'shell', count: 1, onFold: false },
        { cloth: 'interfacing', count: 1, onFold: false },
      ],
      pointNames: [...ENDS, ...notches],
      handles: new Set(),
      outline: outline(notches),
      marks: [{ name: 'fold-line', through: ['underlap_fold', 'overlap_fold'] }],
    }),
    points: (panels, value) => {
      const stretches = waistStretches(
        pieceNamed(panels, front.name),
        pieceNamed(panels, back.name),
      );
      const full = value(BAND_LENGTH.name);
      const share = full / stretches.reduce((sum, stretch) => sum + stretch, 0);
      let along = 0;
      const places = [0, ...stretches.map((stretch) => (along += share * stretch))];
      return [
        ...ends(-value('underlap'), full, value('band_height')),
        ...places.map((x) => point(x, 2 * value('band_height'))),
      ];
    },
  };
}

const ENDS = [
  'underlap_top',
  'overlap_top',
  'overlap_fold',
  'underlap_fold',
  'underlap_waist',
] as const;

function ends(left: number, right: number, height: number): readonly Point[] {
  return [
    point(left, 0),
    point(right, 0),
    point(right, height),
    point(left, height),
    point(left, 2 * height),
  ];
}

/** Every place of the skirt edge that the band meets, in the order in which it meets them. */
function notchNames(front: BlockPiece, back: BlockPiece): readonly string[] {
  const darts = (panel: BlockPiece): readonly string[] =>
    panel.outline.filter((edge) => edge.kind === 'dart').map(({ name }) => `${panel.name}_${name}`);
  const half = ['center_back', ...darts(back), 'side', ...darts(front).toReversed()];
  return [
    ...half.map((name) => `right_${name}`),
    'center_front',
    ...half.toReversed().map((name) => `left_${name}`),
  ];
}

function outline(notches: readonly string[]): readonly Edge[] {
  const line = (from: string, to: string, seam: string): Edge => ({ kind: 'line', from, to, seam });
  const [first = '', last = ''] = [notches[0], notches.at(-1)];
  const toSkirt = notches.toReversed();
  return [
    line('underlap_top', 'overlap_top', 'inside_edge'),
    line('overlap_top', last, 'overlap_end'),
    ...toSkirt.slice(1).map((to, i) => line(toSkirt[i] ?? last, to, 'waist')),
    line(first, 'underlap_waist', 'underlap'),
    line('underlap_waist', 'underlap_top', 'underlap_end'),
  ];
}
