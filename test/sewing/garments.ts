/** Skirts of every style with every finish of the waist, lining, opening at the hem and number of darts. */
import { LONG } from '../samples';
import { SHAPED_NAMES, STYLE_NAMES } from '../styles';

type Settings = Readonly<Record<string, string>>;
/** A style by its name, and what is set in it. */
export type Garment = readonly [style: string, set: Settings];

const OPENINGS: readonly Settings[] = [
  { vent_length: '0 cm' },
  { vent_length: '20 cm', vent_width: '0 cm' },
  { vent_length: '20 cm', vent_width: '4 cm' },
];
/** Band, facing or neither; lined or not; slit, vent or neither. */
const OPTIONS: readonly Settings[] = ['0', '1', '2'].flatMap((waist_finish) =>
  ['0', '1'].flatMap((lining) => OPENINGS.map((opening) => ({ waist_finish, lining, ...opening }))),
);
/** None in front, one, two; what the styles take in by shares or by lengths. */
const NO_FRONT_DART: Settings = { front_intake: '0 cm' };
const DARTS: readonly Settings[] = [
  NO_FRONT_DART,
  { front_darts: '1', back_darts: '1' },
  { front_darts: '2', back_darts: '2' },
];

const AS_THEY_ARE: readonly Garment[] = STYLE_NAMES.map((style) => [style, {}]);

function every(styles: readonly string[], settings: readonly Settings[]): readonly Garment[] {
  return styles.flatMap((style) => settings.map((set): Garment => [style, set]));
}

/** Each style, and its options in one of them; the long run takes all options in every style that has them. */
export const OPTIONED: readonly Garment[] = [
  ...AS_THEY_ARE,
  ...every(LONG ? SHAPED_NAMES : ['shared-drop'], OPTIONS),
];

/** Those and the numbers of darts; the long run takes these with all options. */
export const DARTED: readonly Garment[] = LONG
  ? [
      ...OPTIONED,
      ...DARTS.flatMap((darts) =>
        every(
          SHAPED_NAMES,
          OPTIONS.map((set) => ({ ...set, ...darts })),
        ),
      ),
    ]
  : [
      ...OPTIONED,
      ...every(SHAPED_NAMES, DARTS),
      ...every(
        ['shared-a-line'],
        OPTIONS.map((set) => ({ ...set, ...NO_FRONT_DART })),
      ),
    ];
