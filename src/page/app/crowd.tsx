/** What is asked of a coverage: whose bodies, and what still fits them. */
import { DEFAULT_POPULATION } from '../../coverage/population';
import type { AskedCrowd } from '../state';
import type { CoverageView } from '../wish';
import { Button, Choice } from './controls';
import { FileButton } from './taken-file';

/** Asks for something else; what is undefined has its usual value again. */
export type Ask = (next: {
  readonly [Name in keyof AskedCrowd]?: AskedCrowd[Name] | undefined;
}) => void;

interface Asking {
  readonly asked: AskedCrowd;
  readonly ask: Ask;
  readonly populations: CoverageView['populations'];
}

/** The choice of bodies, the tolerances, and how many sizes are to be proposed. */
export function Crowd(props: Asking) {
  const { asked, ask, populations } = props;
  return (
    <div class="row" role="group" aria-label="Bodies, and what fits them">
      {asked.bodies === undefined ? (
        <Choice
          label="bodies of"
          value={asked.population ?? DEFAULT_POPULATION}
          options={populations}
          onChoose={(population) => ask({ population })}
        />
      ) : (
        <Button onPress={() => ask({ bodies: undefined })}>Without {asked.bodies.file}</Button>
      )}
      <FileButton onFile={(bodies) => ask({ bodies, population: undefined })}>
        A list of your own
      </FileButton>
      <Words {...props} name="waistTolerance" label="waist may be off" hint="2cm" />
      <Words {...props} name="hipTolerance" label="hip may be off" hint="4cm" />
      <Words {...props} name="give" label="cloth gives" hint="5%" />
      <label class="choice">
        propose sizes{' '}
        <input
          type="number"
          min={2}
          max={30}
          value={asked.suggest ?? ''}
          onChange={(event) => {
            const { value, valueAsNumber } = event.currentTarget;
            ask({ suggest: value === '' ? undefined : valueAsNumber });
          }}
        />
      </label>
    </div>
  );
}

function Words({
  asked,
  ask,
  name,
  label,
  hint,
}: Asking & {
  readonly name: 'waistTolerance' | 'hipTolerance' | 'give';
  readonly label: string;
  readonly hint: string;
}) {
  return (
    <label class="choice">
      {label}{' '}
      <input
        type="text"
        size={7}
        placeholder={hint}
        value={asked[name] ?? ''}
        onChange={(event) => {
          ask({ [name]: event.currentTarget.value.trim() || undefined });
        }}
      />
    </label>
  );
}
