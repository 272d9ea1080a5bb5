/**
 * The opening at center back, from the hem up: a slit in the center seam, or a vent with an
 * extension beyond the center line whose upper edge falls away at 45 degrees.
 */
import type { Edge, MarkedLine } from '../../pattern/piece';
import type { PointDefinition } from '../block';

/** Decided once for a whole range, so that all sizes have the same points. */
export type Vent = 'none' | 'slit' | 'extension';

/** The points of the opening. `vent_top` lies on the center line, where the seam ends. */
export function ventPoints(vent: Vent): readonly PointDefinition[] {
  if (vent === 'none') return [];
  const top: PointDefinition = { name: 'vent_top', x: '0', y: 'skirt_length - vent_length' };
  if (vent === 'slit') return [top];
  return [
    top,
    { name: 'vent_top_outer', x: '-vent_width', y: 'vent_top.y + vent_width' },
    { name: 'vent_hem', x: '-vent_width', y: 'skirt_length' },
  ];
}

/** The center back from the hem up to the waist, with the seam that each stretch belongs to. */
export function centerBackEdges(vent: Vent): readonly Edge[] {
  const line = (from: string, to: string, seam: string): Edge => ({ kind: 'line', from, to, seam });
  switch (vent) {
    case 'none':
      return [line('center_hem', 'center_waist', 'center_back')];
    case 'slit':
      return [
        line('center_hem', 'vent_top', 'slit'),
        line('vent_top', 'center_waist', 'center_back'),
      ];
    case 'extension':
      return [
        line('center_hem', 'vent_hem', 'vent_hem'),
        line('vent_hem', 'vent_top_outer', 'vent'),
        line('vent_top_outer', 'vent_top', 'vent_top'),
        line('vent_top', 'center_waist', 'center_back'),
      ];
  }
}

/**
 * The allowance for the zip outside the center line: down to the hem, or to the upper edge of an
 * extension, into which it runs.
 */
export function zipPoints(vent: Vent): readonly PointDefinition[] {
  return [
    { name: 'zip_waist', x: '-zip_allowance', y: 'drop' },
    vent === 'extension'
      ? { name: 'zip_vent', x: '-zip_allowance', y: 'vent_top.y + zip_allowance' }
      : { name: 'zip_hem', x: '-zip_allowance', y: 'skirt_length' },
  ];
}

/** The zip allowance, and the center line where an extension lies beyond it and is folded under. */
export function centerBackMarks(vent: Vent): readonly MarkedLine[] {
  const end = vent === 'extension' ? ['zip_vent', 'vent_top'] : ['zip_hem', 'center_hem'];
  const zip: MarkedLine = {
    name: 'zip-allowance',
    through: ['center_waist', 'zip_waist', ...end],
  };
  return vent === 'extension'
    ? [zip, { name: 'fold-line', through: ['vent_top', 'center_hem'] }]
    : [zip];
}
