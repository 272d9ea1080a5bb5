/** What may be done with the pattern, and what is to be mended or decided first. */
import type { DecisionView, Spot } from '../wish';
import { Button } from './controls';
import type { Shared } from './page';
import { spaced } from './words';

/** The verdict, read out when it changes, and its decisions. */
export function Verdict({
  view,
  refused,
  fault,
  change,
  state,
  onSpot,
}: Shared & { readonly fault: string | undefined; readonly onSpot: (spot: Spot) => void }) {
  const decide = ({ setting }: DecisionView): void => {
    if (setting === undefined) return;
    const set = { ...state.asked.set, [setting.parameter]: setting.value };
    change.asked({ set }, '');
  };
  const kind = refused === undefined ? (view?.verdict.kind ?? 'wait') : 'refused';
  return (
    <section class={`verdict ${kind}`} aria-label="Verdict">
      <p class="line" role="status" aria-live="polite">
        {fault !== undefined
          ? `This is a fault of the program: ${fault}`
          : refused !== undefined
            ? `Not graded: ${refused.message}`
            : (view?.verdict.line ?? 'Grading\u2026')}
      </p>
      {refused !== undefined && view !== undefined && (
        <p class="aside">What is shown is the last skirt that could be graded.</p>
      )}
      {refused === undefined && view !== undefined && view.verdict.decisions.length > 0 && (
        <ol class="decisions">
          {view.verdict.decisions.map((decision) => (
            <Decision decision={decision} onSpot={onSpot} onDecide={decide} />
          ))}
        </ol>
      )}
    </section>
  );
}

function Decision({
  decision,
  onSpot,
  onDecide,
}: {
  readonly decision: DecisionView;
  readonly onSpot: (spot: Spot) => void;
  readonly onDecide: (decision: DecisionView) => void;
}) {
  const { severity, text, spot, setting, findings } = decision;
  return (
    <li class={severity}>
      <span class="kind">{severity === 'fail' ? 'Mend' : 'Decide'}</span>
      <span class="text">{text}</span>
      <span class="acts">
        {spot !== undefined && (
          <Button onPress={() => onSpot(spot)}>
            Show the {spaced(spot.point ?? spot.seam ?? spot.piece)}
          </Button>
        )}
        {setting !== undefined && (
          <Button class="take" onPress={() => onDecide(decision)}>
            Set {spaced(setting.parameter)} to {setting.value}
          </Button>
        )}
      </span>
      <details>
        <summary>Why</summary>
        <ul>
          {findings.map((finding) => (
            <li>{finding}</li>
          ))}
        </ul>
      </details>
    </li>
  );
}
