/** Two versions of what a style is made from: charts, patterns or rule sheets. */
import { readChart } from '../chart/read-chart';
import { readD6673 } from '../dxf/read-d6673';
import { InputError } from '../errors';
import type { TypedPattern } from '../given/read-pattern';
import { readPattern } from '../given/read-pattern';
import type { NamedText } from '../jobs/requests';
import type { Pattern } from '../pattern/pattern';
import { outlineSegments } from '../pattern/piece';
import type { WrittenOutline } from '../render/written-outlines';
import { MOVE_COLUMNS } from '../rule-sheet/rule-columns';
import type { RuleSheet } from '../rule-sheet/rule-sheet';
import { readRuleSheet } from '../rule-sheet/read-rule-sheet';
import { snakeCase, splitLabel } from '../table/label';
import type { LengthUnit } from '../units';
import { chartFacts } from './changes/chart-facts';
import type { Fact } from './changes/facts';
import { patternFacts } from './changes/pattern-facts';
import { drawingRuleFacts, sheetFacts } from './changes/rule-facts';

/** A file of one version; a drawing comes with its rule table. */
export interface Source extends NamedText {
  readonly table?: NamedText;
}

/** What a version says, number by number, and the pieces of a pattern as they are drawn. */
export interface SourceVersion {
  readonly facts: readonly Fact[];
  readonly unit: LengthUnit;
  readonly outlines: readonly WrittenOutline[];
}

type Kind = 'a chart' | 'a pattern' | 'a rule sheet';

/**
 * Reads two files of one kind. `pattern` is what two rule sheets are for: it tells their unit, their base and
 * the names of their points. Throws InputError for files of two kinds, and what their readers throw.
 */
export function sourceVersions(
  before: Source,
  after: Source,
  pattern?: NamedText,
): readonly [SourceVersion, SourceVersion] {
  const [kind, other] = [kindOf(before), kindOf(after)];
  if (kind !== other)
    throw new InputError('bad-option', {
      what: `one is ${kind}, the other ${other}`,
      allowed: 'two versions of one thing',
      got: after.file,
      place: { file: before.file },
    });
  if (kind === 'a rule sheet')
    return ruleSheets(before, after, pattern && readPattern(pattern.text, pattern.file));
  if (pattern !== undefined)
    throw new InputError('bad-option', {
      what: `the option is for two rule sheets, and this is ${kind}`,
      allowed: 'a call without it',
      got: before.file,
      place: { field: 'pattern' },
    });
  return kind === 'a chart'
    ? [chartVersion(before), chartVersion(after)]
    : [patternVersion(before), patternVersion(after)];
}

/** By the columns of a table, of which a chart has none of its own. */
function kindOf({ text, file }: Source): Kind {
  if (/\.dxf$/iu.test(file)) return 'a pattern';
  for (const line of text.split(/[\r\n]+/u)) {
    const heads = line.split(/[,;\t]/u).map((cell) => {
      const bare = cell.replaceAll('"', '');
      return [snakeCase(bare), snakeCase(splitLabel(bare).text)];
    });
    const has = (name: string): boolean => heads.some((names) => names.includes(name));
    if (has('x') && has('y')) return 'a pattern';
    if (has('axis') || Object.keys(MOVE_COLUMNS).some(has)) return 'a rule sheet';
  }
  return 'a chart';
}

function chartVersion({ text, file }: Source): SourceVersion {
  const chart = readChart(text, file);
  return { facts: chartFacts(chart), unit: chart.unit, outlines: [] };
}

function patternVersion(source: Source): SourceVersion {
  if (source.table === undefined) {
    const pattern = readPattern(source.text, source.file);
    return { facts: patternFacts(pattern), unit: pattern.unit, outlines: outlinesOf(pattern) };
  }
  const { pattern, rules } = readD6673(source, source.table);
  return {
    facts: [...patternFacts(pattern, rules.sizes), ...drawingRuleFacts(pattern, rules)],
    unit: pattern.unit,
    outlines: outlinesOf(pattern),
  };
}

/** A pattern shows one size, whatever each version calls it. */
function outlinesOf({ pieces }: Pattern): readonly WrittenOutline[] {
  return pieces.map((piece) => ({
    size: '',
    piece: piece.base.plan.name,
    part: 'outline',
    segments: outlineSegments(piece.base),
  }));
}

function ruleSheets(
  before: Source,
  after: Source,
  pattern: TypedPattern | undefined,
): readonly [SourceVersion, SourceVersion] {
  const read = ({ text, file }: Source): RuleSheet =>
    readRuleSheet(text, file, {
      plans: pattern?.pieces.map((piece) => piece.base.plan),
      unit: pattern?.unit,
      base: pattern?.base,
    });
  const sheets = [read(before), read(after)] as const;
  const [first, second] = sheetFacts(sheets, pattern?.base);
  return [
    { facts: first, unit: sheets[0].unit, outlines: [] },
    { facts: second, unit: sheets[1].unit, outlines: [] },
  ];
}
