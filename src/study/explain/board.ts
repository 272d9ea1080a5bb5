/** A derivation as headings, sentences and tables, for whichever writer shows it. */
import { quotient } from '../../formula/fraction';
import type { LengthDisplay } from '../../units';
import { UNIT_WORDS, showLength, showNumber, toMillimeters } from '../../units';
import type { AxisDerivation, Derivation, DerivedStep } from './derivation';
import { exactText } from './exact';
import { addsUp } from './derivation';
import { ARITHMETIC, SAME_PLACE } from '../../tolerance';

/** One thing on the board. The first row of a table is its header. */
export type BoardLine =
  | { readonly kind: 'heading'; readonly words: string }
  | { readonly kind: 'words'; readonly words: string }
  | { readonly kind: 'formula'; readonly words: string }
  | { readonly kind: 'table'; readonly rows: readonly (readonly string[])[] };

/** The whole derivation; lengths in the unit of `display`, as exact fractions. */
export function board(derived: Derivation, display: LengthDisplay): readonly BoardLine[] {
  const { piece, point, base, zero, axes } = derived;
  return [
    heading(`The grade rule of ${piece}.${point}`),
    words(
      `Base ${base}, zero at ${zero}, lengths in ${UNIT_WORDS[display.unit]}. x runs from the ` +
        'center line to the side, y down from the waist.',
    ),
    ...axes.flatMap((axis) => axisLines(axis, derived, display)),
  ];
}

function heading(text: string): BoardLine {
  return { kind: 'heading', words: text };
}

function words(text: string): BoardLine {
  return { kind: 'words', words: text };
}

function axisLines(
  axis: AxisDerivation,
  { ruler, base }: Derivation,
  display: LengthDisplay,
): readonly BoardLine[] {
  const name = `d${axis.axis}`;
  const { chain, terms, steps } = axis;
  const opening: readonly BoardLine[] = [
    heading(`${name}: the formula`),
    ...(chain.links.length === 0
      ? [words('No formula gives this coordinate: the piece is made from the finished panels.')]
      : chain.links.map(({ name: own, formula }): BoardLine => ({
          kind: 'formula',
          words: `${own} = ${formula}`,
        }))),
    words(
      chain.measurements.length === 0
        ? 'No measurement reaches the point on this way.'
        : `Measurements that reach it: ${chain.measurements.join(', ')}.`,
    ),
  ];
  if (terms.length === 0 && steps.every(({ move }) => Math.abs(move) < SAME_PLACE))
    return [
      ...opening,
      words(`Seen from the zero nothing that grows moves the point: ${name} is 0 in every size.`),
    ];
  const exact = (step: DerivedStep): boolean => addsUp(step, toMillimeters(1, display.unit));
  return [
    ...opening,
    heading(`${name}: the partial derivative`),
    words(derivativeWords(axis, display)),
    ...(steps.length === 0 ? [words(`In the base size ${base} every move is 0.`)] : []),
    ...(steps.length === 0
      ? []
      : [
          heading(`${name}: increments times derivative`),
          words('Each step is taken away from the base: the next size less the one before.'),
          productTable(axis, display),
          heading(`${name}: cumulative`),
          words('The steps are added up from the base outward.'),
          sumTable(axis, display),
          ...(steps.every(exact)
            ? []
            : [
                words(
                  'The rule is not the same in every size, so the products only come near. What ' +
                    'is applied is the difference of the two drafts, in the last column.',
                ),
              ]),
          heading(`${name}: rounding`),
          words(
            `Rounded once, at the end, to ${showLength(ruler, { ...display, fractions: true })}; ` +
              'beside it what rounding every step would have given.',
          ),
          roundingTable(axis, display),
        ]),
  ];
}

function derivativeWords({ kind, rule, terms }: AxisDerivation, { unit }: LengthDisplay): string {
  const one = { in: 'inch', cm: 'centimeter', mm: 'millimeter' }[unit];
  const parts = terms.map(
    ({ measurement, share }) =>
      `one ${one} more of ${measurement} moves the point by ${exactText(share, 'in')} ${one}`,
  );
  const sameAlways = {
    linear: 'What is the same in every size, such as ease, falls away.',
    smooth: 'The derivative holds at the base size and bends away from it.',
    implicit: 'Truing moves the point too, so the derivative is measured beside the base size.',
  }[kind];
  return `The rule is ${rule}: ${parts.join('; ')}. ${sameAlways}`;
}

function productTable({ terms, steps }: AxisDerivation, { unit }: LengthDisplay): BoardLine {
  const text = (value: DerivedStep['step']): string => exactText(value, unit);
  const rows = steps.flatMap((step) =>
    step.terms.map(({ before, after, growth, product }, t) => [
      t === 0 ? `${step.from} to ${step.to}` : '',
      terms[t]?.measurement ?? '',
      `${text(after)} - ${text(before)} = ${text(growth)}`,
      `${factor(terms[t]?.share)} x ${text(growth)} = ${text(product)}`,
    ]),
  );
  return { kind: 'table', rows: [['step', 'measurement', 'increment', 'product'], ...rows] };
}

function factor(share: DerivedStep['step'] | undefined): string {
  return share === undefined ? '' : exactText(share, 'in');
}

function sumTable({ steps }: AxisDerivation, display: LengthDisplay): BoardLine {
  const text = (value: DerivedStep['step']): string => exactText(value, display.unit);
  const rows = steps.map((step) => {
    const before = quotient(step.sum) - quotient(step.step);
    const start = Math.abs(before) < ARITHMETIC ? '0' : text(previous(steps, step));
    const sign = quotient(step.step) < 0 ? '-' : '+';
    const size = text(step.step).replace(/^-/u, '');
    return [
      step.to,
      `${start} ${sign} ${size} = ${text(step.sum)}`,
      showNumber(step.move, display),
    ];
  });
  return { kind: 'table', rows: [['size', 'sum', 'from the drafts'], ...rows] };
}

/** The sum before a step. */
function previous(steps: readonly DerivedStep[], step: DerivedStep): DerivedStep['sum'] {
  return steps.find(({ to }) => to === step.from)?.sum ?? step.sum;
}

function roundingTable({ steps }: AxisDerivation, display: LengthDisplay): BoardLine {
  const fractions = { ...display, fractions: true };
  const rows = steps.map(({ to, move, rounded, drifted }) => [
    to,
    showNumber(move, fractions),
    showNumber(rounded, fractions),
    showNumber(rounded - move, fractions),
    showNumber(drifted, fractions),
    showNumber(drifted - move, fractions),
  ]);
  return {
    kind: 'table',
    rows: [['size', 'exact', 'rounded once', 'off', 'rounded per step', 'off'], ...rows],
  };
}

/** The board as Markdown. */
export function markdown(lines: readonly BoardLine[]): string {
  return lines
    .map((line, i) => {
      switch (line.kind) {
        case 'heading':
          return `${i === 0 ? '#' : '##'} ${line.words}\n`;
        case 'words':
          return `${line.words}\n`;
        case 'formula':
          return `    ${line.words}\n`;
        case 'table':
          return `${markdownTable(line.rows)}\n`;
      }
    })
    .join('\n');
}

function markdownTable([header = [], ...rows]: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => '---')), ...rows.map(line)].join('\n');
}
