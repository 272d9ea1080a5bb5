/** What `assess` tells: the score, the slips with their cells, and what would become of the skirt. */
import { present } from '../lists/present';
import { grouped } from '../lists/grouped';
import { counted } from '../table/counted';
import { notReadFindings } from '../check/not-read';
import type { Run } from '../study/mark/explanations';
import { scoreOf } from '../study/mark/decisions';
import type { FoundSlip } from '../study/mark/fewest-slips';
import type { Diagnosed } from '../study/mark/sureness';
import type { MarkedCell } from '../study/mark/marked-cells';
import type { PointName } from '../pattern/named-point';
import type { Marking } from '../study/mark/mark-sheet';
import { isBlankSheet, isMostlyBlank } from '../study/mark/mark-sheet';
import type { AnswerKey } from '../study/mark/answer-key';
import { rightValues, rowName } from '../study/mark/series';
import { troubleStarts } from '../study/mark/trouble-starts';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { garmentReport } from './garment-report';
import { notReadLine } from './not-read-line';
import { apartWords, surenessWords } from './sureness-words';
import { columnsTable, wrappedParagraph } from './text-table';

/**
 * The report in lines of at most 80 columns, lengths as `display` says; `verbose` has the numbers of every series
 * of a slip, and every slip that would give the same.
 */
export function assessReport(marking: Marking, display: LengthDisplay, verbose = false): string {
  const { cells } = marking;
  const unread = [...notReadLine(notReadFindings(marking.unread)), ...notAsked(marking)];
  if (isBlankSheet(marking))
    return [assessBrief(marking), heading(marking, display), ...unread].join('\n');
  // What is not told is taken as right there: where nothing is wrong, it would be the key's own skirt.
  const open =
    marking.blanks > 0 ? 'blanks' : marking.asked.isPart ? 'what is not asked for' : undefined;
  const hasGarment = open === undefined || cells.some(({ verdict }) => verdict === 'wrong');
  return [
    ...(isMostlyBlank(marking)
      ? [wrappedParagraph(`${blankWords(marking)}: only what is given is judged.`)]
      : []),
    heading(marking, display),
    ...unread,
    score(marking),
    ...wholeSheet(marking),
    ...slips(marking, display, verbose),
    ...missing(marking),
    ...(hasGarment ? [garmentReport(marking.worn, display, open)] : []),
  ].join('\n');
}

function heading(marking: Marking, display: LengthDisplay): string {
  const { sheet, reference, convention, tolerance, asked } = marking;
  const { zeros, up, mirrored } = convention;
  const zeroWords = asked.pieces.map((piece) => {
    const zero = zeros.get(piece)?.join(' and ');
    const words = zero?.includes(' and ') ? `halfway between ${zero}` : zero;
    return words === undefined && reference.zero === ''
      ? `where the rules of the ${piece} have it`
      : `${piece} ${words ?? reference.zero}`;
  });
  return (
    wrappedParagraph(
      `${sheet.file} against ${reference.file}: ${reference.of}, base ` +
        `${reference.grade.range.base}, ${UNIT_WORDS[display.unit]}, tolerance ` +
        showLength(tolerance, { ...display, fractions: true }),
    ) +
    (asked.isPart ? wrappedParagraph(`Asked for: ${pointNames(asked.points)}`) : '') +
    wrappedParagraph(
      `Read with the zero at ${zeroWords.join(', ')}; x from the center to the side` +
        `${mirrored.size === 0 ? '' : ` (mirrored: ${[...mirrored].join(', ')})`}, ` +
        `y ${up ? 'up' : 'down'}. The zero and the direction of the axes are yours to choose.`,
    )
  );
}

function pointNames(points: readonly PointName[]): string {
  return [...new Set(points.map(({ piece, point }) => `${piece}.${point}`))].join(', ');
}

/** What the sheet gives of points beside those that were named. */
export function notAsked({ notAsked: given }: Marking): readonly string[] {
  return given.length === 0
    ? []
    : [wrappedParagraph(`Not asked for, so not judged: ${pointNames(given)}`)];
}

/** One sentence, so that everybody can count along. */
const SCHEME =
  'A decision is the share, the sign or, where the steps change, the place of the break at one ' +
  'point along one axis that moves; a slip carried through the sheet costs one, as does an axis ' +
  'that is wrong though nothing is asked of it. A cause of the whole sheet costs one at each axis ' +
  'that it spoils.';

function score(marking: Marking): string {
  const { cells } = marking;
  const count = (verdict: MarkedCell['verdict']): number =>
    cells.filter((cell) => cell.verdict === verdict).length;
  return (
    wrappedParagraph(`${scoreWords(marking)} ${SCHEME}`) +
    wrappedParagraph(
      `Of ${counted(cells.length, 'cell')}: ${count('right')} right, ${count('wrong')} wrong, ` +
        `${count('missing')} missing.`,
    )
  );
}

function scoreWords(marking: Marking): string {
  const { decisions, answered, blanks } = marking;
  const { asked, given, right } = decisions;
  const percent = scoreOf(decisions);
  if (percent === undefined) return 'No score: nothing that is asked for moves.';
  const open = 'The place of a break is judged where every size is given.';
  if (isMostlyBlank(marking))
    return (
      `Score of what is given: ${right} of ${given} decisions are right, of ${asked} that the ` +
      `whole sheet asks for. ${open}`
    );
  const score = `${percent} of 100, since ${right} of ${counted(asked, 'decision')} ${asked === 1 ? 'is' : 'are'} right.`;
  return answered && blanks > 0
    ? `Score of what is answered: ${score} ${counted(blanks, 'blank cell')} ${blanks === 1 ? 'is' : 'are'} left out. ${open}`
    : `Score: ${score}`;
}

function blankWords({ answered, blanks, cells }: Marking): string {
  return `${blanks} of ${answered ? cells.length + blanks : cells.length} cells are blank`;
}

/** The score alone, without how it is counted. */
export function assessBrief(marking: Marking): string {
  return wrappedParagraph(
    isBlankSheet(marking) ? `Not judged: ${blankWords(marking)}.` : scoreWords(marking),
  );
}

/** What the whole sheet was done by, or that nothing was done. */
function wholeSheet({ cells, cause }: Marking): readonly string[] {
  const given = cells.filter(({ verdict }) => verdict !== 'missing');
  const wrong = given.filter(({ verdict }) => verdict === 'wrong').length;
  if (wrong > 0 && given.every((cell) => Math.abs(cell.given ?? 0) <= SAME_PLACE))
    return [
      wrappedParagraph('Every number is 0: no point is moved, so there is no slip to look for.'),
    ];
  if (cause === undefined) return [];
  const { words, advice } = cause.cause;
  return [
    wrappedParagraph(`The whole sheet: ${words}.`, 2) +
      cause.alike
        .map((other) => wrappedParagraph(`  or, with the same numbers: ${other.words}`, 2))
        .join('') +
      wrappedParagraph(`  ${advice}`, 2) +
      wrappedParagraph(
        cause.explained === 0
          ? `  Together with the slips below this explains ${wrong === 1 ? 'the wrong cell' : `all ${wrong} wrong cells`}.`
          : `  This explains ${Math.min(cause.explained, wrong)} of ${counted(wrong, 'wrong cell')}.`,
        2,
      ),
  ];
}

function slips(marking: Marking, display: LengthDisplay, verbose: boolean): readonly string[] {
  const { found, unexplained } = marking.diagnosis;
  if (found.length === 0 && unexplained.length === 0) return [];
  const sizesOf = (runs: readonly Run[]): number =>
    new Set(runs.flatMap((run) => run.sizes.map((i) => `${rowName(run.series)} ${i}`))).size;
  const explained = sizesOf(found.flatMap(({ runs }) => runs));
  const wrong = explained + sizesOf(unexplained);
  const verb = found.length === 1 ? 'slip explains' : 'slips explain';
  const rest = marking.cause === undefined ? 'wrong cells' : 'cells that are wrong besides';
  return present([
    found.length > 0 &&
      wrappedParagraph(`Likely slips: ${found.length} ${verb} ${explained} of ${wrong} ${rest}.`),
    ...found.map(
      (slip, i) =>
        wrappedParagraph(`${i + 1}. ${slip.slip.words}`, 3) +
        slipText(marking, slip, display, verbose),
    ),
    unexplained.length > 0 &&
      wrappedParagraph(
        'No one slip gives most of these numbers, so no cause is named. Work them out anew ' +
          'from where the trouble starts:',
      ) + unexplained.map((run) => troubleText(marking, run, display)).join(''),
  ]);
}

/** Series shown in full for one slip; the others are only named. */
const SHOWN = 4;

function slipText(
  marking: Marking,
  found: FoundSlip,
  display: LengthDisplay,
  verbose: boolean,
): string {
  const { slip, runs } = found;
  const shown = verbose ? runs.length : SHOWN;
  const more = runs.slice(shown).map(({ series }) => rowName(series));
  return (
    wrappedParagraph(`   ${slip.advice}`, 3) +
    wrappedParagraph(`   ${surenessWords(diagnosed(marking), found)}`, 3) +
    otherWords(marking, found, verbose)
      .map((other) => wrappedParagraph(`   or, with the same numbers: ${other}`, 3))
      .join('') +
    runs
      .slice(0, shown)
      .map((run) => runText(marking, run, display))
      .join('') +
    (more.length === 0 ? '' : wrappedParagraph(`   likewise ${more.join(', ')}`, 3))
  );
}

/** Other slips told beside one; the rest would only make a long list of what one number may be. */
const MOST_ALIKE = 3;

/** What else may have been done, each in its words once, and what would tell. */
function otherWords(marking: Marking, found: FoundSlip, verbose: boolean): readonly string[] {
  const all = [...new Map(found.alike.map((other) => [other.words, other])).values()].filter(
    ({ words }) => words !== found.slip.words,
  );
  const more = all.length - MOST_ALIKE;
  const told = (more > 1 && !verbose ? all.slice(0, MOST_ALIKE) : all).map(
    (other) => `${other.words} - ${apartWords(diagnosed(marking), found, other)}`,
  );
  return told.length < all.length ? [...told, `${more} slips more`] : told;
}

/** A series without a cause: its numbers, and the sizes next to the base in which they go wrong. */
function troubleText(marking: Marking, run: Run, display: LengthDisplay): string {
  const { labels, steps, tenfold } = troubleStarts(diagnosedKey(marking), run);
  const words = present([
    `it starts in ${labels.join(' and ')}`,
    ...steps.map((step) => `beyond, all are off by as much: look at the step ${step}`),
    tenfold.length > 0 &&
      `in ${tenfold.join(' and ')} the decimal point is one place off: ten times, or a tenth`,
  ]);
  return runText(marking, run, display) + wrappedParagraph(`     ${words.join('; ')}`, 5);
}

/** The key that the diagnosis was made by: that of the whole sheet's cause, if it has one. */
function diagnosedKey({ key, cause }: Marking): AnswerKey {
  return cause?.reading.key ?? key;
}

/** The sheet as its slips were found in it. */
export function diagnosed({ key, series, cause, diagnosis, asked, tolerance }: Marking): Diagnosed {
  return {
    ...(cause?.reading ?? { key, series }),
    ...{ found: diagnosis.found, asked: asked.points, tolerance },
  };
}

function runText(marking: Marking, run: Run, display: LengthDisplay): string {
  const { plans, grade } = marking.reference;
  const key = diagnosedKey(marking);
  const { series, sizes } = run;
  const right = rightValues(key, series);
  const p = plans.findIndex(({ name }) => name === series.piece);
  const k = plans[p]?.index.get(series.point) ?? -1;
  const rule = grade.ruleTexts[p]?.[k]?.[series.axis].text ?? '';
  const numbers = (values: readonly (number | undefined)[]): readonly string[] =>
    sizes.map((i) => showNumber(values[i] ?? NaN, display));
  return (
    wrappedParagraph(`   ${rowName(run.series)}, by the rule ${rule}`, 3) +
    columnsTable(
      [
        ['size', ...sizes.map((i) => key.sizes[i] ?? '')],
        ['yours', ...numbers(series.given)],
        ['right', ...numbers(right)],
      ],
      5,
    )
  );
}

function missing({ cells }: Marking): readonly string[] {
  const blank = cells.filter(({ verdict }) => verdict === 'missing');
  if (blank.length === 0) return [];
  const rows = [...grouped(blank, rowName)].map(([name, own]) => ({
    name,
    sizes: own.map(({ size }) => size).join(', '),
  }));
  const lines = [...grouped(rows, ({ sizes }) => sizes)].map(([sizes, own]) =>
    wrappedParagraph(`  in ${sizes}: ${own.map(({ name }) => name).join(', ')}`, 4),
  );
  return [`Missing\n${lines.join('')}`];
}
