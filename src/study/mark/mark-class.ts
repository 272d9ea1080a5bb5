/** The sheets of a class, each marked against one case, and the slips that they share. */
import { InputError } from '../../errors';
import type { NamedText } from '../../jobs/requests';
import { grouped } from '../../lists/grouped';
import { baseNamed } from '../../rule-sheet/points-named';
import type { HandIn, Marking } from './mark-sheet';
import { markAgainst } from './mark-sheet';
import type { DraftedCase, GivenCase, Reference } from './reference';
import { referenceOf } from './reference';

/** One sheet of a class: marked, or refused as one that cannot be read. */
export interface Assessed {
  readonly file: string;
  readonly marking?: Marking;
  readonly refused?: InputError;
}

/** A sheet as it was handed in, or why its file cannot be read. */
export type Handed = NamedText | { readonly file: string; readonly refused: InputError };

/** What several sheets may have been done by, as a whole or in places. */
export interface SharedSlip {
  /** As that of the slip or of the cause; `open` for wrong cells without one. */
  readonly id: string;
  readonly words: string;
  /** Files, each once. */
  readonly sheets: readonly string[];
}

/** How sheets are judged, but for the sheet. */
export type ClassRequest = (DraftedCase | GivenCase) & Omit<HandIn, 'sheet' | 'sheetFile'>;

/**
 * Marks each sheet, telling `begin` which; the case is worked out once for each base. A sheet that cannot be
 * read is set aside. Throws InputError where none can be.
 */
export function markClass(
  request: ClassRequest,
  sheets: readonly Handed[],
  begin: (file: string) => void = () => undefined,
): readonly Assessed[] {
  const references = new Map<string | undefined, Reference>();
  const referenceFrom = (base: string | undefined): Reference => {
    const known = references.get(base);
    const reference = known ?? referenceOf(base === undefined ? request : { ...request, base });
    references.set(base, reference);
    return reference;
  };
  const assessed = sheets.map((sheet): Assessed => {
    if ('refused' in sheet) return sheet;
    const { text, file } = sheet;
    begin(file);
    try {
      const reference = referenceFrom(request.base ?? baseNamed(text, file));
      return {
        file,
        marking: markAgainst(reference, { ...request, sheet: text, sheetFile: file }),
      };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { file, refused: error };
    }
  });
  const [first] = assessed;
  if (first?.refused !== undefined && assessed.every(({ refused }) => refused !== undefined))
    throw first.refused;
  return assessed;
}

/** The slips of a class, those of the most sheets first. */
export function sharedSlips(assessed: readonly Assessed[]): readonly SharedSlip[] {
  const all = assessed.flatMap(({ file, marking }) =>
    marking === undefined ? [] : slipsOf(marking).map((slip) => ({ ...slip, file })),
  );
  return [...grouped(all, ({ id }) => id)]
    .map(([id, own]) => ({
      ...{ id, words: own[0]?.words ?? '' },
      sheets: own.map(({ file }) => file),
    }))
    .toSorted((a, b) => b.sheets.length - a.sheets.length);
}

/** The cause of a sheet and its slips, each once. */
export function slipsOf({ cause, diagnosis }: Marking): readonly Omit<SharedSlip, 'sheets'>[] {
  const { found, unexplained } = diagnosis;
  return [
    ...(cause === undefined ? [] : [{ id: cause.cause.id, words: cause.cause.words }]),
    ...found.map(({ slip: { id, words } }) => ({ id, words })),
    ...(unexplained.length === 0 ? [] : [{ id: 'open', words: 'wrong numbers without a cause' }]),
  ];
}
