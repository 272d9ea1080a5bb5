/** What the pieces of a skirt have besides their lines: allowances, notches, drill holes, grain. */
import { present } from '../lists/present';
import type {
  DrillRule,
  Edge,
  EdgeTraits,
  MarkedLine,
  NotchPlace,
  NotchRule,
  Part,
  PiecePlan,
} from '../pattern/piece';
import { piecePlan } from '../pattern/piece';
import { usualFinish } from '../pattern/allowance';
import type { BlockPiece } from './block';

/** The lines of a piece, from which the rest follows. */
export interface SkirtLines {
  readonly name: string;
  readonly part: Part;
  readonly pointNames: readonly string[];
  readonly outline: readonly Edge[];
  readonly marks: readonly MarkedLine[];
}

type Traits = Pick<PiecePlan, 'edges' | 'grain' | 'notches' | 'drillHoles'> &
  Partial<Pick<PiecePlan, 'zip'>>;

/** The traits of a piece of a skirt, by its part and the names of its seams and points. */
function skirtTraits(lines: SkirtLines): Traits {
  const { name, part, outline } = lines;
  const holes: readonly DrillRule[] = outline.flatMap((edge) =>
    edge.kind === 'dart' ? [{ dart: edge.name }] : [],
  );
  return {
    edges: new Map(outline.map(({ seam }) => [seam, edgeTraits(part, seam)])),
    grain: part === 'waistband' ? 'across' : 'down',
    notches: part === 'waistband' ? bandNotches(outline) : notchesOf(lines),
    drillHoles: holes,
    ...(name === 'back' ? { zip: { top: 'center_waist', level: 'center_hip' } } : {}),
  };
}

/**
 * Seams that meet in sewing share a parameter, so that their cut edges lie on each other. The
 * allowance of the center back is that of the zip, in a slit below it too.
 */
const ALLOWANCES: Readonly<Record<string, string>> = {
  waist: 'waist_allowance',
  tuck: 'waist_allowance',
  underlap: 'waist_allowance',
  side: 'side_allowance',
  hem: 'hem_allowance',
  vent_hem: 'hem_allowance',
  vent: 'vent_allowance',
  vent_top: 'vent_allowance',
  slit: 'zip_allowance',
  center_back: 'zip_allowance',
  inside_edge: 'band_allowance',
  overlap_end: 'band_allowance',
  underlap_end: 'band_allowance',
  facing_edge: 'facing_edge_allowance',
};

/** An edge that is folded has no allowance. */
function edgeTraits(part: Part, seam: string): EdgeTraits {
  const finish = usualFinish(seam);
  const isLiningHem = part === 'lining' && finish === 'hem';
  return { allowance: isLiningHem ? 'lining_hem_allowance' : ALLOWANCES[seam], finish };
}

/**
 * The hip level on side seams, the end of the zip, the top of a vent, the legs of darts and tucks,
 * centers, and on a facing every place that meets a dart. Single on the front, double on the back
 * (common practice, no source).
 */
function notchesOf({ name, part, pointNames, outline, marks }: SkirtLines): readonly NotchRule[] {
  const single = panelOf(name) === 'back' ? 2 : 1;
  const notch = (named: string, place: NotchPlace): NotchRule => ({
    name: named,
    marks: single,
    place,
  });
  const fold = outline.find(({ kind }) => kind === 'fold');
  const centers: readonly NotchPlace[] =
    fold === undefined
      ? [{ by: 'joint', point: 'center_waist', beside: 'after' }]
      : [
          { by: 'along', point: 'center_waist', from: fold.from },
          // A fold, which no seam marks, is marked at the lower edge too.
          { by: 'along', point: fold.from, from: 'center_waist' },
        ];
  const waist = centers.map((place) => notch('center', place));
  if (part === 'facing') {
    const joints = outline.filter(({ seam }) => seam === 'waist').slice(0, -1);
    return [
      ...waist,
      ...joints.map(({ to }) => notch('dart', { by: 'joint', point: to, beside: 'before' })),
    ];
  }
  return present([
    ...waist,
    ...legs(outline, marks).map((place) => notch(part === 'lining' ? 'tuck' : 'dart', place)),
    // On the back as far from the hem as on the front, whatever rounding does to either.
    notch('hip-line', {
      by: 'level',
      edge: 'side',
      joint: 'side_hip',
      like: name.replace(/^(?:right_|left_)?back/u, 'front'),
    }),
    outline.some(({ seam }) => seam === 'center_back') &&
      notch('zip-end', { by: 'zip', edge: 'center_back' }),
    pointNames.includes('vent_top') &&
      notch('vent-top', { by: 'joint', point: 'vent_top', beside: 'after' }),
  ]);
}

/** The panel that a piece of a skirt is of or belongs to: `back` of `back`, `left_back_lining`. */
export function panelOf(name: string): 'front' | 'back' {
  return /^(?:right_|left_)?back/u.test(name) ? 'back' : 'front';
}

/** Along the legs of darts and tucks, as they are folded. */
function legs(outline: readonly Edge[], marks: readonly MarkedLine[]): readonly NotchPlace[] {
  return [
    ...outline.flatMap((edge): readonly NotchPlace[] =>
      edge.kind === 'dart'
        ? [edge.from, edge.to].map((point) => ({ by: 'along', point, from: edge.tip }))
        : [],
    ),
    ...marks
      .filter((mark) => mark.name === 'tuck')
      .map(({ through: [point = '', from = ''] }): NotchPlace => ({ by: 'along', point, from })),
  ];
}

/**
 * On a band every joint of the waist edge, which stands where darts and seams of the skirt meet it,
 * its two ends at center back too. Back darts and center back are double, as on the back.
 */
function bandNotches(outline: readonly Edge[]): readonly NotchRule[] {
  const waist = outline.filter(({ seam }) => seam === 'waist');
  const places = [
    ...waist.slice(0, 1).map(({ from }) => ({ point: from, beside: 'after' as const })),
    ...waist.map(({ to }) => ({ point: to, beside: 'before' as const })),
  ];
  return places.map(({ point, beside }) => ({
    name: point,
    marks: point.includes('back') ? 2 : 1,
    place: { by: 'joint', point, beside },
  }));
}

/** The plan of a piece that a skirt has besides its panels, with its traits. */
export function skirtPlan(plan: Parameters<typeof piecePlan>[0]): PiecePlan {
  return piecePlan({ ...plan, ...skirtTraits(plan) });
}

/** A panel of a skirt: half a front or half a back, with its traits. */
export function skirtPanel(piece: BlockPiece): BlockPiece {
  const lines = { ...piece, pointNames: piece.points.map(({ name }) => name) };
  return { ...piece, part: 'panel', ...skirtTraits({ ...lines, part: 'panel' }) };
}
