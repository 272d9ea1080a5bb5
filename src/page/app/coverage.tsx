/** Whom the sizes fit: a population or a list of bodies, shares, changes, and the cloud of bodies. */
import { UNIT_WORDS } from '../../units';
import type { LengthDisplay } from '../../units';
import type { AskedCrowd } from '../state';
import type { CoverageView, SizeShare } from '../wish';
import { Button, Later } from './controls';
import type { Ask } from './crowd';
import { Crowd } from './crowd';
import type { Shared } from './page';
import { Table } from './table';
import { useSettled } from './use-settled';
import { useTold } from './use-told';

/** Worked out once it is opened, and then whenever chart and skirt have stayed the same for a while. */
export function Coverage(props: Shared) {
  return (
    <Later name="Whom the sizes fit" isOpen={props.state.crowd !== undefined}>
      {() => <Opened {...props} />}
    </Later>
  );
}

function Opened({ state, change, engine, pattern, view }: Shared) {
  const asked = state.crowd ?? {};
  const settled = useSettled(pattern);
  const { told, refused } = useTold(engine, { kind: 'coverage', pattern: settled, asked });
  const ask: Ask = (next) => {
    // What is left empty has its usual value.
    const given = Object.entries({ ...asked, ...next }).filter(([, value]) => value !== undefined);
    change.state((now) => ({ ...now, crowd: Object.fromEntries(given) as AskedCrowd }), 'crowd');
  };
  return (
    <>
      <Crowd asked={asked} ask={ask} populations={told?.populations ?? []} />
      <p class="line" role="status" aria-live="polite">
        {refused !== undefined ? refused.message : (told?.served ?? 'Fitting bodies\u2026')}
      </p>
      {told !== undefined && refused === undefined && view !== undefined && (
        <Shares
          told={told}
          display={view.display}
          onTake={(text) => {
            change.chart({ text, file: 'suggested-chart.csv' });
          }}
        />
      )}
    </>
  );
}

function Shares({
  told,
  display,
  onTake,
}: {
  readonly told: CoverageView;
  readonly display: LengthDisplay;
  readonly onTake: (chart: string) => void;
}) {
  const { served, rules, notes, leftOut, changes, published, drawing, suggested } = told;
  return (
    <>
      <figure>
        <img
          class="cloud"
          src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawing)}`}
          alt={`Bodies by waist and hip, the sizes as boxes over those whom they fit, and published tables as lines. ${served}. The tables have its numbers.`}
        />
      </figure>
      <div class="figures shares">
        <SizeTable caption="Share that each size serves" sizes={told.sizes} display={display} />
        {leftOut.length > 0 && (
          <Table caption="Left out" heads={['bodies', 'share']} rows={leftOut} />
        )}
        {changes.length > 0 && (
          <Table caption="What one change would win" heads={['change', 'share']} rows={changes} />
        )}
        <Table
          caption="Published tables under the same rules"
          heads={['table', 'share']}
          rows={published}
        />
        {suggested !== undefined && (
          <div>
            <SizeTable
              caption={`Sizes proposed, which would serve ${suggested.served}`}
              sizes={suggested.sizes}
              display={display}
            />
            <Button onPress={() => onTake(suggested.chart)}>Take them as the chart</Button>
          </div>
        )}
      </div>
      <p class="aside">{rules}</p>
      {notes.map((note) => (
        <p class="aside">{note}</p>
      ))}
    </>
  );
}

function SizeTable({
  caption,
  sizes,
  display,
}: {
  readonly caption: string;
  readonly sizes: readonly SizeShare[];
  readonly display: LengthDisplay;
}) {
  return (
    <Table
      caption={`${caption}, in ${UNIT_WORDS[display.unit]}`}
      heads={['size', 'waist', 'hip', 'share']}
      rows={sizes}
    />
  );
}
