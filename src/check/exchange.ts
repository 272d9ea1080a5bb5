/** What a pattern for exchange could not carry. */
import type { Finding } from './finding';

/** What the check asks of a piece that goes out for exchange. */
export interface SentPiece {
  readonly name: string;
  /** True where it goes out with its net line alone, though it has a cut line. */
  readonly lacksCutLine: boolean;
}

/** One finding for each piece that goes out without its allowances. */
export function checkExchange(pieces: readonly SentPiece[]): Finding[] {
  return pieces
    .filter(({ lacksCutLine }) => lacksCutLine)
    .map(({ name }) => ({
      severity: 'warning',
      check: 'exchange',
      size: '',
      piece: name,
      subject: 'cut line',
      quantity: 'number',
      source: 'ASTM D6673, unverified: the points of a piece are the same in every size',
      message:
        'its cut line has other corners in some sizes than in the base, so pattern.dxf has its ' +
        'net line without allowances; nest.dxf has the cut lines',
    }));
}
