/** The steps of the shell: darts, center back with its zip and vent, sides, hem. */
import { present } from '../lists/present';
import { zipEnd, ZIP_LAP, zipOf } from '../pattern/zip';
import type { SewnSkirt } from './skirt';
import { hasEdge } from './skirt';
import type { SewingStep } from './step';
import { edgesOf } from './step';

/** No tolerance: a choice of 0 or 1, which a style may spell as any number between. */
const TO_SIDE = 0.5;

/** The darts of front and back; none for a skirt without. */
export function dartStep({ front, back, number }: SewnSkirt): SewingStep | undefined {
  const sews = [front, back].flatMap(({ name, darts }) =>
    darts.map((dart) => ({ piece: name, edge: dart.name })),
  );
  if (sews.length === 0) return undefined;
  const way = (number('press_to_side') ?? 0) < TO_SIDE ? 'the centers' : 'the sides';
  return {
    title: 'Darts',
    words: [
      'Fold each dart right sides together so that its two notches at the waist meet.',
      'Sew along the marked line from the waist to the tip, just outside the drill mark, the last ' +
        'stitches on the edge of the fold; knot the threads instead of sewing back.',
      `Press all darts toward ${way}, and over a ham or a rolled towel so that the tip lies flat.`,
    ],
    sews,
  };
}

/** The seam at center back up to the zip, the zip, and the opening below. */
export function centerBackSteps(skirt: SewnSkirt): readonly SewingStep[] {
  const { back, opening, width, told, zip } = skirt;
  const end = { none: 'the hem', slit: 'the top of the slit', vent: 'the top of the vent' }[
    opening
  ];
  // The notch stands where the zip ends, which is said as it is sold.
  const open =
    zip ??
    told(({ pieces, parameters }) => {
      const own = zipOf(pieces, parameters);
      return own && zipEnd(own);
    });
  const seam: SewingStep = {
    title: 'Center back seam',
    words: [
      'Neaten the center back and side edges of both backs, and lay them right sides together.',
      `Leave the opening for the zip free, from the waist seam to the notch of the zip end: ${open}. ` +
        `Sew from the notch to ${end}, ${width('zip_allowance')} from the edge. Press the seam open, ` +
        'and press the allowances of the opening to the wrong side as if it were sewn.',
      `Sew back at the notch and at ${end}.`,
    ],
    sews: edgesOf([back], 'center_back', 'below'),
  };
  const setIn: SewingStep = {
    title: 'Zip',
    words: [
      `Set the zip into the opening${zip === undefined ? '' : `: ${zip}`}. Its stop lies at the notch; ` +
        'if teeth stand out above the waist seam, take a plastic zip, open it until the slider is below that ' +
        'seam, sew by hand over the teeth of each half just below it, and only then cut off what stands above.',
      'The left back laps over the right: stitch the right edge close to the teeth, and the left one ' +
        `${told(() => ZIP_LAP)} from its fold and across the end.`,
    ],
    sews: edgesOf([back], 'center_back', 'above'),
  };
  return present([seam, setIn, openingStep(skirt)]);
}

function openingStep({ back, opening, width, linings }: SewnSkirt): SewingStep | undefined {
  switch (opening) {
    case 'none':
      return undefined;
    case 'slit':
      return {
        title: 'Slit',
        words: [
          'Press the allowances below the seam to the wrong side along both edges of the slit, and ' +
            'sew them down by hand or on the machine, across the top of the slit too.',
        ],
        sews: edgesOf([back], 'slit'),
      };
    case 'vent': {
      const edges =
        linings.length > 0
          ? `Neaten the long edges of both extensions; the lining will be sewn to them.`
          : `Turn ${width('vent_allowance')} of the long edge of each extension to the wrong side and sew it down.`;
      return {
        title: 'Vent',
        words: [
          edges,
          'Fold the left extension in along the center line and press: the left back ends in this fold. The ' +
            'right extension stays flat below it. Snip the allowance of the right back at the top of the vent, to ' +
            'the last stitch of the seam but not through it, so that the seam above lies open.',
          'Pin both extensions on each other and sew their slanting upper edges together, ' +
            `${width('vent_allowance')} from the edge, through the left back too if the stitches may show.`,
        ],
        sews: [
          ...edgesOf([back], 'vent_top'),
          ...(linings.length > 0 ? [] : edgesOf([back], 'vent')),
        ],
        section: 'vent',
      };
    }
  }
}

/** The side seams of the shell. */
export function sideStep({ front, back, width }: SewnSkirt): SewingStep {
  return {
    title: 'Side seams',
    words: [
      'Neaten the side edges of the front. Lay front and back right sides together. The notches of the hip line meet, and so do both ends.',
      `Sew ${width('side_allowance')} from the edge, and press the seams open.`,
    ],
    sews: edgesOf([front, back], 'side'),
  };
}

/** The hem of the shell, with the lower edges of a vent. */
export function hemStep({ front, back, width, opening, number }: SewnSkirt): SewingStep {
  const isFlared = (number('hem_taper') ?? 0) < 0 || (number('dart_closing') ?? 0) > 0;
  return {
    title: 'Hem',
    words: present([
      'Let the skirt hang for a day, try it on and level the hem.',
      `Neaten the edge, turn up ${width('hem_allowance')} and press. Sew it by hand with stitches that ` +
        'do not show.',
      isFlared &&
        'Where the hem is curved its edge is longer than the skirt that it is sewn to: run a thread along the ' +
          'edge first, and draw it in until the hem lies flat.',
      opening === 'vent' &&
        'At the vent unfold the left extension, turn the hem up over the whole width, and fold the ' +
          'extension back on it; the right one is turned up with the hem.',
    ]),
    sews: [
      ...edgesOf([front, back], 'hem'),
      ...(hasEdge(back, 'vent_hem') ? edgesOf([back], 'vent_hem') : []),
    ],
  };
}
