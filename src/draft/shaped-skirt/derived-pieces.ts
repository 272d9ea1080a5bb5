/** Which pieces a style makes from its panels, decided once for the range. */
import type { BlockPiece, DerivedPiece, RangeFacts } from '../block';
import { facing } from './facing';
import { linings } from './lining';
import { waistband } from './waistband';

/** Waistband or facings, then linings, for a half front and a half back. */
export function derivedPieces(
  front: BlockPiece,
  back: BlockPiece,
  { atBase }: RangeFacts,
): readonly DerivedPiece[] {
  const finish = atBase('waist_finish');
  return [
    ...(finish === 1 ? [waistband(front, back)] : []),
    ...(finish === 2 ? [facing(front), facing(back)] : []),
    ...(atBase('lining') === 1 ? [...linings(front), ...linings(back)] : []),
  ];
}
