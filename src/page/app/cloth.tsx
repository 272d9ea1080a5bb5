/** The cloth to buy: lines by size and width, tables, and a lay that is chosen. */
import type { AskedCloth } from '../state';
import type { ClothView } from '../wish';
import { Choice, Later } from './controls';
import type { Shared } from './page';
import { Picture } from './pictures';
import { Table } from './table';
import { useSettled } from './use-settled';
import { useTold } from './use-told';

/** Laid once it is opened, and then whenever the skirt has stayed the same for a while. */
export function Cloth(props: Shared) {
  return (
    <Later name="Cloth to buy" isOpen={props.state.cloth !== undefined}>
      {() => <Opened {...props} />}
    </Later>
  );
}

function Opened({ state, change, engine, pattern, view }: Shared) {
  const asked = state.cloth ?? {};
  const settled = useSettled(pattern);
  const { told, refused } = useTold(engine, { kind: 'cloth', pattern: settled, asked });
  const ask = (next: AskedCloth): void => {
    change.state((now) => ({ ...now, cloth: { ...asked, ...next } }), 'cloth');
  };
  const said = refused?.message ?? told?.told ?? 'Laying pieces\u2026';
  if (told === undefined || refused !== undefined || view === undefined)
    return <p role="status">{said}</p>;
  return (
    <>
      <div class="figures">
        {told.pictures.map((picture) => (
          <Picture picture={picture} display={view.display} />
        ))}
      </div>
      <details>
        <summary>Every width and fold, in both units</summary>
        {told.tables.map(({ heading, sizes, rows, notes }) => (
          <>
            <Table caption={heading} heads={['width and fold', 'unit', ...sizes]} rows={rows} />
            {notes.map((note) => (
              <p class="aside">{note}</p>
            ))}
          </>
        ))}
      </details>
      <h3>A lay</h3>
      <LayChoice told={told} onAsk={ask} />
      <p role="status">{said}</p>
      {told.drawing !== undefined && (
        <figure>
          <img
            class="lay"
            src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(told.drawing)}`}
            alt={`The pieces as they lie on the cloth. ${said}`}
          />
        </figure>
      )}
    </>
  );
}

/** In the order in which cloth is bought. */
const FIELDS = ['cloth', 'width', 'fold', 'nap', 'size'] as const satisfies (keyof AskedCloth)[];

function LayChoice({
  told: { choices, chosen },
  onAsk,
}: {
  readonly told: ClothView;
  readonly onAsk: (next: AskedCloth) => void;
}) {
  return (
    <div class="row" role="group" aria-label="Which lay">
      {FIELDS.map((field) => (
        <Choice
          label={field}
          value={chosen[field]}
          options={choices[field]}
          onChoose={(name) => onAsk({ [field]: name })}
        />
      ))}
    </div>
  );
}
