/** The skirt that is drafted: its style, and every parameter of it. */
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../../units';
import type { LengthUnit } from '../../units';
import type { ParameterView, Refused } from '../wish';
import { Button } from './controls';
import type { Shared } from './page';
import { useTold } from './use-told';
import { inBothUnits, spaced } from './words';

/** Styles by their drawings, then the parameters under their headings. */
export function Skirt(props: Shared) {
  const { view, state } = props;
  const groups = groupsOf(view?.parameters ?? []);
  return (
    <section class="slip skirt" aria-label="Skirt">
      <h2>Skirt</h2>
      {state.styleFile === undefined ? (
        <Styles {...props} />
      ) : (
        <p>
          Style file <span class="file">{state.styleFile.file}</span>
        </p>
      )}
      {groups.map(({ heading, parameters }, i) => {
        const list = parameters.map((parameter) => (
          <Parameter key={parameter.name} parameter={parameter} {...props} />
        ));
        return i === 0 ? (
          <div class="group first">
            <h3>{heading}</h3>
            {list}
          </div>
        ) : (
          <details class="group">
            <summary>{heading}</summary>
            {list}
          </details>
        );
      })}
    </section>
  );
}

function groupsOf(
  parameters: readonly ParameterView[],
): readonly { readonly heading: string; readonly parameters: readonly ParameterView[] }[] {
  const headings = [...new Set(parameters.map(({ group }) => group))];
  return headings.map((heading) => ({
    heading,
    parameters: parameters.filter(({ group }) => group === heading),
  }));
}

function Styles({ engine, view, change }: Shared) {
  const { told: styles = [] } = useTold(engine, { kind: 'styles' });
  return (
    <fieldset class="styles">
      <legend>Style</legend>
      {styles.map(({ name, description, drawing }) => (
        <label class="style" title={description}>
          <input
            type="radio"
            name="style"
            value={name}
            checked={view?.style === name}
            onChange={() => {
              change.asked({ style: name, set: {} }, '');
            }}
          />
          <img
            src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawing)}`}
            alt={description}
          />
          <span>{spaced(name)}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Parameter({
  parameter,
  state,
  change,
  view,
  refused,
}: Shared & { readonly parameter: ParameterView }) {
  const { name, text, value, quantity, meaning, source, range } = parameter;
  const typed = state.asked.set?.[name];
  const set = (next: string | undefined, about: string): void => {
    const { [name]: _, ...others } = state.asked.set ?? {};
    change.asked({ set: next === undefined ? others : { ...others, [name]: next } }, about);
  };
  const trouble = refusalOf(name, refused);
  const unit = view?.display.unit ?? 'cm';
  return (
    <div class="parameter">
      <label for={`set-${name}`}>{spaced(name)}</label>
      <input
        id={`set-${name}`}
        type="text"
        value={typed ?? text}
        aria-invalid={trouble !== undefined}
        aria-describedby={`about-${name}`}
        onInput={(event) => {
          set(event.currentTarget.value, `set ${name}`);
        }}
      />
      <Slider
        parameter={parameter}
        unit={unit}
        onSlide={(next) => {
          set(next, `set ${name}`);
        }}
      />
      <output>{value === undefined ? '' : valueWords(value, quantity, unit)}</output>
      {typed !== undefined && (
        <Button
          class="quiet"
          aria-label={`${spaced(name)} as the style has it`}
          onPress={() => set(undefined, '')}
        >
          as it was
        </Button>
      )}
      <details class="about">
        <summary>About</summary>
        <p id={`about-${name}`}>
          {meaning}. {range}. From: {source}.
        </p>
      </details>
      {trouble !== undefined && <p class="trouble">{trouble}</p>}
    </div>
  );
}

function refusalOf(name: string, refused: Refused | undefined): string | undefined {
  return refused?.place.parameter?.split(', ').includes(name) === true
    ? refused.message
    : undefined;
}

function valueWords(value: number, quantity: 'length' | 'number', unit: LengthUnit): string {
  return quantity === 'length'
    ? inBothUnits(value, { unit, fractions: unit === 'in' })
    : trimmed(value, 2);
}

/** Steps of a slider in mm: an eighth of an inch, or a quarter of a centimeter. */
const STEPS: Readonly<Record<LengthUnit, number>> = {
  in: toMillimeters(1 / 8, 'in'),
  cm: 2.5,
  mm: 2.5,
};
/** Steps of a plain number that is no count: this part of its range. */
const PARTS = 100;

function Slider({
  parameter,
  unit,
  onSlide,
}: {
  readonly parameter: ParameterView;
  readonly unit: LengthUnit;
  readonly onSlide: (text: string) => void;
}) {
  const { name, quantity, least, most, whole, value } = parameter;
  const step = quantity === 'length' ? STEPS[unit] : whole ? 1 : (most - least) / PARTS;
  const words = (steps: number): string =>
    quantity === 'number'
      ? trimmed(steps * step, 3)
      : unit === 'in'
        ? `${inchFraction(steps * step, 8)} in`
        : `${trimmed(fromMillimeters(steps * step, unit), 2)} ${unit}`;
  return (
    <input
      type="range"
      min={Math.ceil(least / step)}
      max={Math.floor(most / step)}
      step={1}
      value={Math.round((value ?? least) / step)}
      aria-label={`${spaced(name)}, slider`}
      aria-valuetext={value === undefined ? '' : valueWords(value, quantity, unit)}
      onInput={(event) => {
        onSlide(words(event.currentTarget.valueAsNumber));
      }}
    />
  );
}
