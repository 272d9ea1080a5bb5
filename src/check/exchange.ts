/** What a pattern for exchange could not carry. */
import type { Finding } from './finding';
import { found } from './finding';

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
    .map(({ name }) =>
      found({
        severity: 'warning',
        check: 'exchange',
        piece: name,
        subject: 'cut line',
        source: 'ASTM D6673, unverified: the points of a piece are the same in every size',
        message:
          'its cut line has other corners in some sizes than in the base, so pattern.dxf has its ' +
          'net line without allowances; nest.dxf has the cut lines',
      }),
    );
}

/** One finding for each piece that was to be drawn whole and is drawn on the fold. */
export function checkUnfolded(pieces: readonly string[]): Finding[] {
  return pieces.map((name) =>
    found({
      severity: 'warning',
      check: 'still-folded',
      piece: name,
      source: "the engine's own rule: a whole piece is twice its half",
      message:
        'its fold is not straight, or its outline meets the fold again, so nest.dxf has it on the fold in the ' +
        'sizes whose names do not say "unfolded"',
    }),
  );
}

/** A seam that words in an exchange file cannot say. */
export interface UnsaidSeam {
  readonly name: string;
  /**
   * `mirrored` for an edge that meets its own image on the other half of the garment, `other half` for
   * a side that goes on over edges of the other half.
   */
  readonly why: 'mirrored' | 'other half';
}

const WHY: Record<UnsaidSeam['why'], string> = {
  mirrored: 'there an edge meets its own image on the other half of the garment',
  'other half':
    'there a side runs on over edges of the other half of the garment, which is not drawn',
};

/** One note for each reason, with the names of all seams of which pattern.dxf says nothing. */
export function noteUnsaidSeams(seams: readonly UnsaidSeam[]): Finding[] {
  return (['mirrored', 'other half'] as const).flatMap((why): Finding | [] => {
    const names = seams.filter((seam) => seam.why === why).map(({ name }) => name);
    if (names.length === 0) return [];
    return found({
      severity: 'note',
      check: 'exchange-seams',
      subject: names.join(', '),
      source: 'ASTM D6673, unverified: it carries no relations between pieces',
      message:
        `not said in pattern.dxf, so not walked where it is read: ${names.join(', ')}; ${WHY[why]}. ` +
        'seams.csv has all lengths',
    });
  });
}
