/** What is sewn to what in a skirt, by the parts and edges that its pieces have. */
import type { Edge, Part } from '../pattern/piece';
import type { SeamEdge, SeamPair } from '../pattern/seam-pair';
import { seamPair } from '../pattern/seam-pair';
import { panelOf } from './skirt-traits';

/** What a seam wants to know of a piece. */
interface SewnPiece {
  readonly name: string;
  readonly part?: Part;
  readonly outline: readonly Edge[];
}

/**
 * The side seams; the front fold and the center back, where each half meets its mirror image; the
 * waist with its band, facings and linings. Panels, facings and linings are a front and a back, whose
 * outlines run from the center over the side to the hem.
 */
export function skirtSeams(pieces: readonly SewnPiece[]): readonly SeamPair[] {
  return [
    ...(['panel', 'facing', 'lining'] as const).flatMap((part) => sides(pieces, part)),
    ...centers(pieces),
    ...pieces.flatMap((piece) => [...atWaist(piece), ...atVent(piece)]),
  ];
}

function sides(pieces: readonly SewnPiece[], part: Part): readonly SeamPair[] {
  const [front, ...backs] = pieces.filter((piece) => piece.part === part);
  if (front === undefined) return [];
  // The hems of linings are turned up on their own and need not run on.
  const runsOn = [true, part !== 'lining'] as const;
  return backs.map((back) => {
    const name = part === 'panel' ? 'side' : `${halfOf(back.name)}${part} side`;
    return seamPair(name, oneEach(front.name, back.name, 'side'), { way: 'same', runsOn });
  });
}

/** `left ` of `left_back_lining`; nothing of a piece that is the same on both sides. */
function halfOf(name: string): string {
  return name.replace(/^(?:(right|left)_)?.*$/u, (_, half?: string) => (half ? `${half} ` : ''));
}

function oneEach(first: string, second: string, edge: string): SeamPair['sides'] {
  return [{ edges: [{ piece: first, edge }] }, { edges: [{ piece: second, edge }] }];
}

/** Waist and hem are square to the center where the seam or fold reaches them. */
function centers(pieces: readonly SewnPiece[]): readonly SeamPair[] {
  return pieces
    .filter(({ part }) => part === 'panel')
    .flatMap(({ name, outline }) =>
      outline
        .filter(({ seam }) => seam.startsWith('center_') || seam === 'slit')
        .map(({ seam, from, to }) =>
          seamPair(seam.replace('_', ' '), oneEach(name, name, seam), {
            way: 'same',
            runsOn: [from === 'center_hem', to === 'center_waist'],
          }),
        ),
    );
}

/** The whole waist from left center back to right; each half panel lies on both sides of the front. */
const WHOLE_WAIST: readonly SeamEdge[] = [
  { piece: 'back', edge: 'waist' },
  { piece: 'front', edge: 'waist', back: true },
  { piece: 'front', edge: 'waist' },
  { piece: 'back', edge: 'waist', back: true },
];

/**
 * The lining round a vent: sewn to itself down to the top of the vent, as the shell is, and from there
 * along the upper edge and the side of the extension, down to the hem of the lining.
 */
function atVent({ name, part, outline }: SewnPiece): readonly SeamPair[] {
  if (part !== 'lining' || !outline.some(({ seam }) => seam === 'vent')) return [];
  return [
    ['center_back', 'center back'],
    ['vent_top', 'upper edge of the vent'],
    ['vent', 'vent'],
  ].map(([edge = '', said = '']) =>
    seamPair(`${said} and ${halfOf(name)}lining`, oneEach('back', name, edge), {
      way: 'same',
      ease: edge === 'vent' ? 'lining_shorter' : 0,
      notches: 'left out',
      runsOn: [false, false],
    }),
  );
}

function atWaist({ name, part }: SewnPiece): readonly SeamPair[] {
  const panel = panelOf(name);
  const runsOn = [false, false] as const;
  const edge = (own: string): SeamEdge => ({ piece: name, edge: own });
  switch (part) {
    case 'facing':
    case 'lining':
      return [
        seamPair(`${halfOf(name)}${panel} waist and ${part}`, oneEach(panel, name, 'waist'), {
          way: 'same',
          runsOn,
        }),
      ];
    case 'waistband':
      return [
        seamPair('waist and band', [{ edges: WHOLE_WAIST }, { edges: [edge('waist')] }], {
          way: 'same',
          ease: 'band_ease',
          spread: 'even',
          runsOn,
        }),
        seamPair(
          'inside and outside of the band',
          [{ edges: [edge('inside_edge')] }, { edges: [edge('waist'), edge('underlap')] }],
          { way: 'opposite', notches: 'left out', runsOn },
        ),
      ];
    default:
      return [];
  }
}
