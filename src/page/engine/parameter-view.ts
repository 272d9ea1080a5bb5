/** The parameters of a graded skirt under their headings, each with its value in the base size. */
import { parameterGroups } from '../../draft/parameter-groups';
import type { ResolvedParameter } from '../../draft/parameters';
import { parseLength } from '../../table/number-cell';
import type { GradedPattern } from '../../grade/graded-pattern';
import type { ParameterView } from '../wish';

/** In the order of their groups; none of a pattern that was not drafted. */
export function parameterViews(range: GradedPattern): readonly ParameterView[] {
  const parameters = range.draft?.parameters ?? [];
  const values = range.sizes.find(({ label }) => label === range.base)?.parameters;
  return parameterGroups(parameters.map(({ definition }) => definition.name)).flatMap(
    ({ heading, names }) =>
      names.flatMap((name) =>
        parameters
          .filter(({ definition }) => definition.name === name)
          .map((parameter) => parameterView(parameter, heading, values?.get(name))),
      ),
  );
}

function parameterView(
  { definition, origin, text, source }: ResolvedParameter,
  group: string,
  value: number | undefined,
): ParameterView {
  const { name, quantity, least, most, meaning, count = false } = definition;
  const bound = (written: string): number =>
    quantity === 'length' ? (parseLength(written, 'mm') ?? 0) : Number(written);
  return {
    ...{ name, group, quantity, value, text, origin, meaning, source },
    whole: count,
    least: bound(least),
    most: bound(most),
    range: `${least} to ${most}`,
  };
}
