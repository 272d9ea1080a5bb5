/** The ways to look at a nest: its lines, its zero, between sizes, one over another, true size. */
import type { SkirtView } from '../wish';
import { Button, Choice, Tick } from './controls';
import type { Camera } from './camera';
import type { Shared } from './page';
import { TrueSize } from './true-size';
import { spaced } from './words';

/** Below the nest. */
export function Lookings(
  props: Shared & {
    readonly view: SkirtView;
    readonly camera: () => Camera | undefined;
  },
) {
  const { state, change, view, camera } = props;
  const { looks } = state;
  const tick = (name: 'net' | 'cut' | 'unfolded', words: string) => (
    <Tick isOn={looks[name]} onTick={(isOn) => change.looks({ [name]: isOn })}>
      {words}
    </Tick>
  );
  return (
    <div class="lookings">
      <div class="row" role="group" aria-label="How near">
        <Button onPress={() => camera()?.fit()}>Whole nest</Button>
        <Button aria-label="Nearer" onPress={() => camera()?.nearer(1.4)}>
          +
        </Button>
        <Button aria-label="Farther" onPress={() => camera()?.nearer(1 / 1.4)}>
          {'\u2212'}
        </Button>
        <TrueSize looks={looks} change={change} camera={camera} />
      </div>
      <div class="row" role="group" aria-label="Lines">
        {tick('net', 'sewing lines')}
        {tick('cut', 'cut lines')}
        {tick('unfolded', 'folded out')}
        <Choice
          label="sizes lie on"
          value={view.stackPoint}
          options={[
            ...(view.stackPoint === '' ? [['', 'as the rules say'] as const] : []),
            ...view.stackPoints.map((name) => [name, spaced(name)] as const),
          ]}
          onChoose={(stack) => change.asked({ stack }, 'stack')}
        />
      </div>
      {view.sizes.length > 1 && <Between {...props} />}
      {view.sizes.length > 1 && <Over {...props} />}
    </div>
  );
}

/** The slider from the smallest size to the largest. */
function Between({ state, change, view }: Shared & { readonly view: SkirtView }) {
  const { between } = state.looks;
  const last = view.sizes.length - 1;
  const at = between ?? view.sizes.indexOf(view.base);
  const low = view.sizes[Math.floor(at)] ?? '';
  const high = view.sizes[Math.ceil(at)] ?? '';
  return (
    <div class="row between" role="group" aria-label="From size to size">
      <label class="slide">
        from {view.sizes[0]} to {view.sizes[last]}
        <input
          type="range"
          min={0}
          max={last}
          step="any"
          value={at}
          aria-valuetext={low === high ? `size ${low}` : `between ${low} and ${high}`}
          onInput={(event) => {
            change.looks({ between: event.currentTarget.valueAsNumber, pair: undefined });
          }}
        />
      </label>
      {between !== undefined && (
        <>
          <output>{low === high ? low : `${low} to ${high}`}</output>
          <Button class="quiet" onPress={() => change.looks({ between: undefined })}>
            All sizes again
          </Button>
        </>
      )}
    </div>
  );
}

/** Two sizes laid over each other. */
function Over({ state, change, view }: Shared & { readonly view: SkirtView }) {
  const { pair } = state.looks;
  const { sizes, base } = view;
  const at = Math.min(sizes.indexOf(base), sizes.length - 2);
  const own = pair ?? { smaller: sizes[at] ?? '', larger: sizes[at + 1] ?? '' };
  const choose = (which: 'smaller' | 'larger', words: string) => (
    <select
      aria-label={words}
      value={own[which]}
      disabled={pair === undefined}
      onChange={(event) => {
        change.looks({ pair: { ...own, [which]: event.currentTarget.value } });
      }}
    >
      {sizes.map((label) => (
        <option value={label}>{label}</option>
      ))}
    </select>
  );
  return (
    <div class="row" role="group" aria-label="One size over another">
      <Tick
        isOn={pair !== undefined}
        onTick={(isOn) => change.looks({ pair: isOn ? own : undefined, between: undefined })}
      >
        one over another:
      </Tick>
      {choose('smaller', 'First size')} and {choose('larger', 'Second size')}
    </div>
  );
}
