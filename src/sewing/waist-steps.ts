/** The steps of the waist: a band, a facing, or neither. */
import { present } from '../lists/present';
import type { SewnSkirt } from './skirt';
import { hasDarts } from './skirt';
import type { SewingStep } from './step';
import { edgesOf } from './step';

/** What is fused before anything is sewn; none where nothing is cut from interfacing. */
export function interfacingStep({ band, facings }: SewnSkirt): SewingStep | undefined {
  const fused = present([band, ...facings]).filter(({ cuttings }) =>
    cuttings.some(({ cloth }) => cloth === 'interfacing'),
  );
  if (fused.length === 0) return undefined;
  return {
    title: 'Interfacing',
    words: [
      `Fuse the interfacing to the wrong side of the ${band === undefined ? 'facings' : 'waistband'} ` +
        'as its maker says; try it on a scrap first.',
    ],
    sews: [],
    beside: fused.map(({ name }) => name),
  };
}

/** The waist from the raw edge to the closed opening. */
export function waistSteps(skirt: SewnSkirt): readonly SewingStep[] {
  if (skirt.band !== undefined) return bandSteps(skirt, skirt.band);
  return skirt.facings.length > 0 ? facingSteps(skirt) : boundSteps(skirt);
}

function shellAndLining({ front, back, linings }: SewnSkirt): SewingStep['sews'] {
  return [...edgesOf([front, back], 'waist'), ...edgesOf(linings, 'waist')];
}

function bandSteps(skirt: SewnSkirt, band: NonNullable<SewnSkirt['band']>): readonly SewingStep[] {
  const { width, number } = skirt;
  const ease =
    (number('band_ease') ?? 0) > 0
      ? `The skirt is ${width('band_ease')} wider than the band: ease it in evenly, without pleats. `
      : '';
  return [
    {
      title: 'Waistband',
      words: [
        'Pin the notched edge of the band to the waist, right sides together: every notch meets its ' +
          `${hasDarts(skirt) ? 'dart or seam' : 'seam or notch'}. The underlap stands out beyond the right ` +
          'back; the other end stands out beyond the fold of the left ' +
          `one by its allowance of ${width('band_allowance')}. ` +
          `${ease}Sew ${width('waist_allowance')} from the edge and press the seam into the band.`,
        'Fold the band along its fold line, right sides together, and close both ends ' +
          `${width('band_allowance')} from the edge, along the lower edge of the underlap too. Trim, turn ` +
          'and press.',
        'Fold the inner edge in and sew it along the seam by hand.',
      ],
      sews: [
        ...shellAndLining(skirt),
        ...['waist', 'overlap_end', 'underlap_end', 'underlap', 'inside_edge'].flatMap((edge) =>
          edgesOf([band], edge),
        ),
      ],
    },
    {
      title: 'Closing',
      words: [
        `Sew a hook and bar, or a button and buttonhole, to the band: the underlap of ${width('underlap')} ` +
          'lies below the left end.',
      ],
      sews: [],
    },
  ];
}

function facingSteps(skirt: SewnSkirt): readonly SewingStep[] {
  const { facings, width } = skirt;
  const [, ...backs] = facings;
  return [
    {
      title: 'Facing',
      words: [
        `Sew the front facing to the back facings at the sides, ${width('side_allowance')} from the edge, ` +
          'and press the seams open. Neaten the lower edge.',
        `Pin the facing to the waist, right sides together: its notches meet ${dartsAndSeams(skirt)}. Sew ` +
          `${width('waist_allowance')} from the edge, trim the allowances in steps and snip them to the ` +
          'stitches. Press the facing up, and sew through it and the allowances close to the seam.',
        'Turn the facing in. Fold its ends in along the zip and sew them to the tape by hand; catch it at ' +
          'the side seams.',
      ],
      sews: [
        ...edgesOf(facings, 'side'),
        ...edgesOf(facings, 'facing_edge'),
        ...shellAndLining(skirt),
        ...edgesOf(facings, 'waist'),
        ...edgesOf(backs, 'center_back'),
      ],
    },
    {
      title: 'Closing',
      words: ['Sew a hook and eye above the zip.'],
      sews: [],
    },
  ];
}

function boundSteps(skirt: SewnSkirt): readonly SewingStep[] {
  return [
    {
      title: 'Waist',
      words: [
        'This pattern has no band and no facing. Bind the waist with a bias strip, or sew a firm ribbon ' +
          `along it: lay it on the right side, sew ${skirt.width('waist_allowance')} from the edge, turn it in ` +
          `and catch it at ${dartsAndSeams(skirt)}.`,
        'Sew a hook and eye above the zip.',
      ],
      sews: shellAndLining(skirt),
    },
  ];
}

function dartsAndSeams(skirt: SewnSkirt): string {
  return hasDarts(skirt) ? 'darts and seams' : 'seams';
}
