/** `skirtgrade explain`: the rule of one point derived as on a board. */
import { basename, dirname } from 'node:path';
import type { BoardLine } from '../study/explain/board';
import { board, markdown } from '../study/explain/board';
import { quotient } from '../formula/fraction';
import type { Derivation } from '../study/explain/derivation';
import { derivation } from '../study/explain/derivation';
import { sumText } from '../study/explain/sum-text';
import { USUAL_RULER } from '../study/explain/usual-ruler';
import { ladderDrawing } from '../study/explain/ladder-drawing';
import { notReadFindings, unreadInChart } from '../check/not-read';
import { InputError } from '../errors';
import type { PointRules } from '../study/explain/piece-rules';
import { pieceRules } from '../study/explain/piece-rules';
import type { Drafted, Grade } from '../jobs/grade-result';
import { readRoundingStep } from '../grade/rounding-step';
import { gradeUnchecked } from '../jobs/grade-chart';
import type { Scene } from '../render/scene';
import { svg } from '../render/svg';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { notReadFacts, notReadLine } from './not-read-line';
import { readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';
import { wrappedParagraph, textTable, wrappedTable } from './text-table';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `explain` as commander reads them. */
export interface ExplainCommandOptions extends StyleOptions, Telling {
  readonly base?: string;
  /** The only size to derive; all if absent. */
  readonly size?: string;
  /** The ruler of the last step, as typed. */
  readonly round?: string;
  readonly stack?: string;
  readonly unit?: LengthUnit;
  readonly markdown?: boolean;
  /** Path of the ladder; none is drawn if absent. */
  readonly out?: string;
  readonly replace?: boolean;
}

/**
 * Prints the derivation of `piece.point`, and draws its ladder if asked for; without a point the rules
 * of all corners of the panels. Throws InputError for
 * what cannot be derived or written.
 */
export async function explainCommand(
  file: string,
  point: string | undefined,
  options: ExplainCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const { set, style, project, size, round, out, replace, markdown: asMarkdown, ...rest } = options;
  const chart = readNamed(io, file);
  const result = gradeUnchecked({
    ...rest,
    chart: chart.text,
    file: chart.file,
    ...styleRequest({ style, set, project }, io),
  });
  const unread = notReadFindings([...result.pattern.unread, ...unreadInChart(result.chart)]);
  const beside = notReadLine(unread).map((line) => `\n${line}`);
  const not_read = notReadFacts(unread);
  if (point === undefined) {
    if (out !== undefined) refuseLadder();
    const rules = pieceRules(result);
    return tell(io, 'explain', options, {
      exitCode: 0,
      words: () =>
        [rulesReport(result, rules, pointCall(file, result.range.base, options)), ...beside].join(
          '',
        ),
      facts: () => ({ base: result.range.base, zero: result.range.stackPoint, rules, not_read }),
    });
  }
  const display = { unit: result.display.unit, fractions: true };
  const ruler =
    round === undefined ? USUAL_RULER[display.unit] : readRoundingStep(round, display.unit);
  const derived = derivation(result, point, ruler, size);
  const lines = board(derived, display);
  const told = asMarkdown ? markdown(lines) : lines.map(lineText).join('');
  const drawn = `\n${wrappedParagraph(`The ladder of all sizes is drawn in ${out ?? ''}.`)}`;
  const written =
    out === undefined
      ? undefined
      : await writeLadder(out, ladderDrawing(derived, display), replace, io);
  return tell(io, 'explain', options, {
    exitCode: 0,
    words: () => {
      const more = [...beside, ...(out === undefined ? [] : [drawn])];
      return asMarkdown ? told : [told, ...more].join('');
    },
    brief: written && (() => namesReport(written)),
    facts: () => ({ ...explainFacts(derived), drawing: out, not_read }),
  });
}

function writeLadder(
  path: string,
  ladder: Scene,
  replace: boolean | undefined,
  io: Io,
): Promise<WrittenFiles> {
  const name = basename(path);
  const set = `explain ${name}`;
  return io.write(dirname(path), [{ name, text: svg(ladder) }], { set, replace });
}

function refuseLadder(): never {
  throw new InputError('bad-option', {
    what: 'a ladder is drawn for one point, and none is named',
    allowed: 'a point after the chart, such as front.side_waist',
    place: { field: 'out' },
  });
}

/** The call that explains a point of the same draft; texts with blanks in quotes. */
function pointCall(
  file: string,
  base: string,
  { style, set }: ExplainCommandOptions,
): (point: string) => string {
  const typed = (text: string): string => (/^[\w./-]+$/u.test(text) ? text : `"${text}"`);
  return (point) =>
    [
      ...[
        'skirtgrade',
        'explain',
        typed(file),
        point,
        '--base',
        typed(base),
        '--style',
        typed(style),
      ],
      ...set.flatMap((one) => ['--set', typed(one)]),
    ].join(' ');
}

/** One row a point, a table a piece. */
function rulesReport(
  { range }: Grade & Drafted,
  rules: readonly PointRules[],
  callFor: (point: string) => string,
): string {
  const pieces = [...new Set(rules.map(({ piece }) => piece))];
  const shown = rules.find(({ dx }) => dx !== '0') ?? rules[0];
  const zero = range.stackPoint === '' ? 'as drafted' : range.stackPoint;
  return [
    wrappedParagraph(
      `What moves each point, for one more of the measurement, base ${range.base}, zero at ${zero}; ` +
        'x runs from the center line to the side, y down. A tilde marks a rule that holds at the base ' +
        'and bends away from it.',
    ),
    ...pieces.map((piece) => {
      const own = rules.filter((rule) => rule.piece === piece);
      const rows = own.map(({ point, dx, dy }) => [point, dx, dy]);
      return `\n${piece}\n${wrappedTable([['point', 'dx', 'dy'], ...rows])}`;
    }),
    '\nOne of them step by step\n',
    wrappedParagraph(`  ${callFor(`${shown?.piece ?? ''}.${shown?.point ?? ''}`)}`, 4),
  ].join('');
}

/** The derivation as values: a share is how far the point moves for 1 of its measurement. */
function explainFacts({ piece, point, base, zero, ruler, axes }: Derivation): object {
  return {
    point: `${piece}.${point}`,
    base,
    zero,
    ruler,
    axes: axes.map(({ axis, kind, rule, chain, reached, terms, steps }) => ({
      axis: `d${axis}`,
      kind,
      rule,
      moved_by: reached,
      formulas: chain.links.map(({ name, given }) => ({
        name,
        formula: typeof given === 'string' ? given : sumText(given, 'mm'),
      })),
      shares: Object.fromEntries(
        terms.map(({ measurement, share }) => [measurement, quotient(share)]),
      ),
      steps: steps.map(({ from, to, move, rounded, drifted }) => ({
        from,
        to,
        move,
        rounded,
        sum_of_rounded_steps: drifted,
      })),
    })),
  };
}

function lineText(line: BoardLine): string {
  switch (line.kind) {
    case 'heading':
      return `\n${wrappedParagraph(line.words)}`;
    case 'words':
      return wrappedParagraph(`  ${line.words}`, 2);
    case 'formula':
      return wrappedParagraph(`    ${line.words}`, 6);
    case 'table':
      return textTable(line.rows, line.rows[0]?.includes('product') ? 4 : 2).replace(
        /^(?=.)/gm,
        '  ',
      );
  }
}
