/** The steps of a lining: made up by itself, laid into the skirt, and sewn to zip and vent. */
import { present } from '../lists/present';
import type { SewnSkirt } from './skirt';
import { hasEdge } from './skirt';
import type { SewingStep } from './step';
import { edgesOf } from './step';

/** The lining until it is a skirt of its own; none for a skirt without one. */
export function liningSteps({ linings, opening, width }: SewnSkirt): readonly SewingStep[] {
  const [, ...backs] = linings;
  if (backs.length === 0) return [];
  const tucked = linings.filter((plan) => hasEdge(plan, 'tuck'));
  const end = { none: 'the hem', slit: 'the slit', vent: 'the vent' }[opening];
  const pair =
    backs.length > 1
      ? 'The right and the left back differ at the vent. Lay them right sides together, center back edges on ' +
        'each other.'
      : 'Lay both backs right sides together.';
  return present([
    tucked.length > 0 && {
      title: 'Tucks of the lining',
      words: [
        'Fold each tuck right sides together along its middle, and sew along its marked line from ' +
          'the waist as far as it is marked; below it stays open. Press the tucks the other way ' +
          'than the darts.',
      ],
      sews: edgesOf(tucked, 'tuck'),
    },
    {
      title: 'Seams of the lining',
      words: present([
        `${pair} Sew the center back from the notch of the zip end to ${end}, ` +
          `${width('zip_allowance')} from the edge.`,
        `Sew the side seams ${width('side_allowance')} from the edge. Press all seams to one side.`,
        opening === 'vent' &&
          'Snip the allowance of the right back at the top of the vent, to the last stitch.',
      ]),
      sews: [...edgesOf(backs, 'center_back', 'below'), ...edgesOf(linings, 'side')],
    },
    {
      title: 'Lining into the skirt',
      words: [
        'Lay the lining into the skirt wrong sides together, seams and notches on each other, and baste ' +
          'the two waist edges together.',
        'Fold the edges of the lining in along the zip, clear of its teeth, and sew them to the tape by hand.',
      ],
      sews: edgesOf(backs, 'center_back', 'above'),
      beside: linings.map(({ name }) => name),
    },
  ]);
}

/** The hem of the lining, which is leveled by that of the skirt; none for a skirt without a lining. */
export function liningHemStep({ linings, width }: SewnSkirt): SewingStep | undefined {
  if (linings.length === 0) return undefined;
  return {
    title: 'Hem of the lining',
    words: [
      `Turn the lining up so that it ends ${width('lining_shorter')} above the finished hem of the skirt: ` +
        `${width('lining_hem_allowance')} if that was turned up as drafted. Fold the raw edge in and sew it.`,
    ],
    sews: [
      ...edgesOf(linings, 'hem'),
      ...edgesOf(
        linings.filter((plan) => hasEdge(plan, 'vent_hem')),
        'vent_hem',
      ),
    ],
  };
}

/** The lining at the vent or slit, once both hems are sewn. */
export function liningEdgeStep({
  back,
  linings,
  opening,
  width,
}: SewnSkirt): SewingStep | undefined {
  const [, ...backs] = linings;
  if (backs.length === 0 || opening === 'none') return undefined;
  if (opening === 'slit')
    return {
      title: 'Lining at the slit',
      words: [
        'Fold the edges of the lining in beside the slit and sew them to its allowances by hand.',
      ],
      sews: edgesOf(backs, 'slit'),
    };
  return {
    title: 'Lining at the vent',
    words: [
      'Sew a line of small stitches round the inner corner of the left back lining, on the sewing line, and ' +
        'snip to it.',
      `Fold ${width('vent_allowance')} of the edges of the lining to the wrong side. The left one meets ` +
        'the extension that is folded in, the right one the extension that lies below.',
      'Sew the lining to both extensions along their long edges and across their upper ends; leave a ' +
        'little slack in the length so that nothing pulls.',
    ],
    sews: [...edgesOf([back], 'vent'), ...edgesOf(backs, 'vent'), ...edgesOf(backs, 'vent_top')],
    section: 'lined-vent',
  };
}
