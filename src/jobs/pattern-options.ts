/** What may be asked for when a given pattern is graded, held against the pattern. */
import { InputError } from '../errors';
import type { GivenPattern } from '../given/pattern';
import type { GradedPattern, SizedPieces } from '../grade/graded-range';

/**
 * A drawing has its rules and its sample size in its own table. Throws InputError `bad-option` for a
 * base or a chart beside them.
 */
export function refuseForDrawing(
  { base, chart }: { readonly base?: string; readonly chart?: { readonly file: string } },
  sample: string,
): void {
  const refuse = (field: string, what: string, allowed: string, got: string): never => {
    throw new InputError('bad-option', { what, allowed, got, place: { field } });
  };
  if (base !== undefined && base.trim() !== sample) {
    refuse('base', 'the base is the sample size that the rule table states', sample, base);
  }
  if (chart !== undefined) {
    refuse('chart', 'a rule table has no formulas', 'a drawing without a chart', chart.file);
  }
}

/** The sizes asked for. Throws InputError `size-unknown`. */
export function shownSizes(
  { sizes }: GradedPattern,
  labels: readonly string[] | undefined,
): readonly SizedPieces[] {
  const known = sizes.map(({ label }) => label);
  const unknown = labels?.find((label) => !known.includes(label));
  if (unknown === undefined) {
    return sizes.filter(({ label }) => labels === undefined || labels.includes(label));
  }
  throw new InputError('size-unknown', {
    what: 'the range has no such size',
    allowed: known.join(', '),
    got: unknown,
    place: { field: 'sizes' },
  });
}

/** Throws InputError `point-unknown` if no piece has the stack point. */
export function checkStack({ pieces }: GivenPattern, stackPoint: string): void {
  if (stackPoint === '' || pieces.some(({ base }) => base.plan.index.has(stackPoint))) return;
  const names = pieces.flatMap(({ base: { plan } }) =>
    plan.pointNames.filter((name) => !plan.handles.has(name)),
  );
  throw new InputError('point-unknown', {
    what: 'no piece has this stack point',
    allowed: [...new Set(names)].join(', '),
    got: stackPoint,
    place: { field: 'stack' },
  });
}
