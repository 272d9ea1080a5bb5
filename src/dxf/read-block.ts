/** A block of an exchange file after ASTM D6673, unverified, back to the points of a piece. */
import type { RawPiece } from '../given/raw-point';
import type { ReadingNote } from '../pattern/pattern';
import { EXCHANGED } from '../tolerance';
import { isAt, placeSet } from './block-places';
import type { BlockContent } from './block-point';
import { entitiesOn } from './block-point';
import { cutLinePoints, outlinePoints } from './block-line';
import type { BlockFeatures } from './block-features';
import { featuresOf } from './block-features';
import type { BlockOutlines } from './block-outlines';
import { blockOutlines } from './block-outlines';
import { cuttingsOf, isKnownWord, pieceTitle } from './block-words';
import { D6673_LAYERS } from './d6673-layers';
import type { PlacedBlock } from './placed-blocks';
import type { DxfEntity } from './entity';
import type { RuleNumber } from './rule-words';
import { matchedRules } from './rule-words';
import { unreadNotes } from './unread-entities';

/** A block that was read: its points, and which rule moves each. */
export interface ReadBlock {
  readonly piece: RawPiece;
  /** The rule number of each point that has one. */
  readonly numbers: ReadonlyMap<string, RuleNumber>;
  /** What the block has that the piece has not, or has in another way. */
  readonly notes: readonly ReadingNote[];
}

/**
 * Reads a block whose entities are in mm. The seam line is the outline where there is one with rules,
 * since that is the line to be walked, and the boundary then the cut line; otherwise the boundary is
 * the outline. Throws InputError `dxf-malformed`.
 */
export function readBlock(placed: PlacedBlock, file: string): ReadBlock {
  const name = pieceTitle(placed);
  const outlines = blockOutlines(placed, name, file);
  const { entities, marks } = outlines;
  const block: BlockContent = { entities, marks, file };
  const { outline, cut } = outlines;
  const onOutline = outlinePoints(block, outline.line);
  const cutLine = cut === undefined ? [] : cutLinePoints(block, cut.line);
  const features = featuresOf(block, placed.turned, onOutline, cutLine);
  const points = [...onOutline, ...features.points];
  const { sewnNotches } = features;
  const all = [...points, ...cutLine, ...features.cutNotches, ...sewnNotches.values()];
  const { numbers, lost } = matchedRules(all, block.entities);
  const said = entitiesOn(block, D6673_LAYERS.annotation, 'TEXT');
  const doubles = said.filter(({ words }) => words === 'DOUBLE NOTCH');
  const notches = [...onOutline.filter(({ raw }) => raw.kind === 'notch'), ...features.cutNotches];
  return {
    piece: {
      name,
      points: points.map(({ raw }) => raw),
      cuttings: cuttingsOf(
        said.map(({ words }) => words),
        placed.mirrored,
      ),
      allowances: new Map(),
      cutLine: cutLine.map(({ raw }) => raw),
      cutNotches: features.cutNotches.map(({ raw }) => raw),
      sewnNotches: new Map([...sewnNotches].map(([notch, { raw }]) => [notch, raw])),
      doubleNotches: new Set(
        notches.filter(({ raw }) => doubles.some(isAt(raw.at))).map(({ raw }) => raw.name),
      ),
    },
    numbers,
    notes: [
      ...outlines.notes,
      ...gapNotes(outlines, name),
      ...unreadNotes([...lost, ...unread(block, outlines, features)], name),
      ...turnedNotes(placed, numbers, name),
    ],
  };
}

/** What of the block is in no way in the piece; words that give rules are told apart from it. */
function unread(
  { entities }: BlockContent,
  { outline, cut }: BlockOutlines,
  features: BlockFeatures,
): readonly DxfEntity[] {
  const rows = new Set([...outline.parts, ...(cut?.parts ?? [])]);
  const lines = [outline.line, ...(cut === undefined ? [] : [cut.line])];
  const notches = features.cutNotches.map(({ raw }) => raw.at);
  const corners = [...lines.flatMap(({ points }) => points), ...notches];
  const isCorner = placeSet(corners);
  const isMarked = ({ points: [at] }: DxfEntity): boolean => at !== undefined && isCorner(at);
  return entities.filter((entity) => {
    if (rows.has(entity) || features.read.has(entity)) return false;
    if (entity.type === 'TEXT') return !isKnownWord(entity, isMarked);
    const isMark = entity.type === 'POINT' && MARKS.has(entity.layer);
    return !(isMark && isMarked(entity));
  });
}

const MARKS: ReadonlySet<string> = new Set([D6673_LAYERS.turnPoint, D6673_LAYERS.curvePoint]);

function gapNotes({ outline, cut }: BlockOutlines, piece: string): readonly ReadingNote[] {
  return [outline, ...(cut === undefined ? [] : [cut])]
    .filter(({ gap }) => gap > EXCHANGED)
    .map(({ gap, line }) => ({
      severity: 'note',
      check: 'gap-closed',
      piece,
      what:
        `ends of lines on layer ${line.layer} that miss each other by up to ` +
        `${Math.round(gap * 100) / 100} mm were joined`,
    }));
}

/** Rules of a block that was turned, and that says nothing of their direction. */
function turnedNotes(
  { turned, entities, mirrored }: PlacedBlock,
  numbers: ReadBlock['numbers'],
  piece: string,
): readonly ReadingNote[] {
  const hasLine = entities.some(({ layer }) => layer === D6673_LAYERS.gradeReference);
  if (turned === undefined || hasLine || numbers.size === 0) return [];
  return [
    {
      severity: 'warning',
      check: 'placed',
      piece,
      what:
        `the block is inserted ${mirrored ? 'mirrored' : 'turned'} and has no grade reference line; ` +
        'its rules are counted in the axes of the block and turned with it',
    },
  ];
}
