/** The nest as large as it is: the screen is measured with a bank card held to it. */
import { useState } from 'preact/hooks';
import { PIXELS_PER_MILLIMETER } from '../../units';
import type { Looks } from '../state';
import { Button } from './controls';
import type { Camera } from './camera';
import type { Change } from './page';

/** mm. A card of format ID-1 (ISO/IEC 7810), as every bank card has. */
const CARD = { width: 85.6, height: 53.98, radius: 3.18 };
/** What screens have; the engine's own figure. */
const [LEAST, MOST] = [2, 16] as const;

/** A button that shows true size, and the card by which the screen is measured once. */
export function TrueSize({
  looks,
  change,
  camera,
}: {
  readonly looks: Looks;
  readonly change: Change;
  readonly camera: () => Camera | undefined;
}) {
  const [isOpen, setOpen] = useState(false);
  const measured = looks.perMillimeter;
  const scale = measured ?? PIXELS_PER_MILLIMETER;
  return (
    <>
      <Button
        onPress={() => {
          if (measured === undefined) setOpen(true);
          else camera()?.at(measured);
        }}
      >
        True size
      </Button>
      <Button class="quiet" aria-expanded={isOpen} onPress={() => setOpen(!isOpen)}>
        Measure the screen
      </Button>
      {isOpen && (
        <CardBox
          scale={scale}
          onScale={(next) => {
            change.looks({ perMillimeter: next });
          }}
          onFits={() => {
            change.looks({ perMillimeter: scale });
            setOpen(false);
            camera()?.at(scale);
          }}
        />
      )}
    </>
  );
}

/** The outline of a card that grows with a slider, in pixels of a millimeter. */
function CardBox({
  scale,
  onScale,
  onFits,
}: {
  readonly scale: number;
  readonly onScale: (scale: number) => void;
  readonly onFits: () => void;
}) {
  const [width, height] = [CARD.width * scale, CARD.height * scale];
  return (
    <div class="card-box">
      <p>
        Hold a bank card to the screen and move the slider until the outline is as large as the card
        (85.60 mm by 53.98 mm, ISO/IEC 7810).
      </p>
      <svg
        class="card"
        width={width}
        height={height}
        role="img"
        aria-label="Outline of a bank card"
      >
        <rect x="0.5" y="0.5" width={width - 1} height={height - 1} rx={CARD.radius * scale} />
      </svg>
      <input
        type="range"
        min={LEAST}
        max={MOST}
        step="0.01"
        value={scale}
        aria-label="Size of the card on the screen"
        onInput={(event) => {
          onScale(event.currentTarget.valueAsNumber);
        }}
      />
      <Button onPress={onFits}>The card fits: show true size</Button>
    </div>
  );
}
