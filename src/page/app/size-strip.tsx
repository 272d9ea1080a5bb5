/** The sizes as a strip: each with its line, shown or put away. */
import type { Looks } from '../state';
import type { SkirtView } from '../wish';
import { Button } from './controls';
import type { Change } from './page';
import { sizeLook } from './size-look';

/** A button a size; `onRaise` gets the label of the one that is pointed at. */
export function SizeStrip({
  view,
  looks,
  change,
  onRaise,
}: {
  readonly view: SkirtView;
  readonly looks: Looks;
  readonly change: Change;
  readonly onRaise: (label: string | undefined) => void;
}) {
  const { sizes, base } = view;
  if (sizes.length < 2) return null;
  return (
    <div class="strip" role="group" aria-label="Sizes shown">
      {sizes.map((label, rank) => (
        <Chip
          label={label}
          look={sizeLook(rank, label === base)}
          isBase={label === base}
          isShown={!looks.hidden.includes(label)}
          onRaise={onRaise}
          onShow={(isShown) => {
            const others = looks.hidden.filter((other) => other !== label);
            change.looks({ hidden: isShown ? others : [...others, label] });
          }}
        />
      ))}
      <Button class="quiet" onPress={() => change.looks({ hidden: [] })}>
        All
      </Button>
      <Button
        class="quiet"
        onPress={() => change.looks({ hidden: sizes.filter((label) => label !== base) })}
      >
        Base alone
      </Button>
    </div>
  );
}

/** One size with its line as in the nest. */
function Chip({
  label,
  look: { className, dash },
  isBase,
  isShown,
  onRaise,
  onShow,
}: {
  readonly label: string;
  readonly look: ReturnType<typeof sizeLook>;
  readonly isBase: boolean;
  readonly isShown: boolean;
  readonly onRaise: (label: string | undefined) => void;
  readonly onShow: (isShown: boolean) => void;
}) {
  const raise = (): void => {
    onRaise(isShown ? label : undefined);
  };
  const drop = (): void => {
    onRaise(undefined);
  };
  return (
    <button
      type="button"
      class={`chip ${className}`}
      aria-pressed={isShown}
      aria-label={`Size ${label}${isBase ? ', base' : ''}`}
      onClick={() => {
        onShow(!isShown);
      }}
      onPointerEnter={raise}
      onPointerLeave={drop}
      onFocus={raise}
      onBlur={drop}
    >
      <svg width="34" height="8" aria-hidden="true">
        <path class="net alone" d="M1 4H33" stroke-dasharray={dash} />
      </svg>
      <span class="label">{label}</span>
    </button>
  );
}
