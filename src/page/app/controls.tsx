/** Buttons, ticks, choices and parts that open, as every part of the page has them. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

/** A button that does something, and sends no form; the rest of what it is told are attributes. */
export function Button({
  onPress,
  children,
  ...attributes
}: {
  readonly onPress: () => void;
  readonly children: ComponentChildren;
  readonly class?: string;
  readonly disabled?: boolean;
  readonly 'aria-label'?: string;
  readonly 'aria-expanded'?: boolean;
}) {
  return (
    <button type="button" {...attributes} onClick={onPress}>
      {children}
    </button>
  );
}

/** A tick beside its words. */
export function Tick({
  isOn,
  onTick,
  children,
}: {
  readonly isOn: boolean;
  readonly onTick: (isOn: boolean) => void;
  readonly children: ComponentChildren;
}) {
  return (
    <label class="tick">
      <input
        type="checkbox"
        checked={isOn}
        onChange={(event) => {
          onTick(event.currentTarget.checked);
        }}
      />
      {children}
    </label>
  );
}

/** A choice among values, each with its words. */
export function Choice({
  label,
  value,
  options,
  onChoose,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly onChoose: (value: string) => void;
}) {
  return (
    <label class="choice">
      {label}{' '}
      <select
        value={value}
        onChange={(event) => {
          onChoose(event.currentTarget.value);
        }}
      >
        {options.map(([own, words]) => (
          <option value={own}>{words}</option>
        ))}
      </select>
    </label>
  );
}

/** A part of the page that is worked out only once it is opened. */
export function Later({
  name,
  isOpen,
  children,
}: {
  readonly name: string;
  /** Whether it is open from the beginning. */
  readonly isOpen: boolean;
  readonly children: () => ComponentChildren;
}) {
  const [open, setOpen] = useState(isOpen);
  return (
    <section class="slip" aria-label={name}>
      <details
        open={open}
        onToggle={(event) => {
          setOpen(event.currentTarget.open);
        }}
      >
        <summary>
          <h2>{name}</h2>
        </summary>
        {open && children()}
      </details>
    </section>
  );
}
