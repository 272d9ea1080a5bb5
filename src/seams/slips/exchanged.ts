/** The rules of two points exchanged. */
import type { SlipFamily } from './suspected-slip';

/** With each point that the rule may have been mixed up with, once for the two of them. */
export const exchangeSlips: SlipFamily = ({ at, name, moves, sheet, others }) => {
  if (moves === undefined) return [];
  return others.flatMap((other) => {
    const theirs = sheet[other.at.piece]?.get(other.at.point);
    if (theirs === undefined || theirs.every((move, i) => isSame(move, moves[i]))) return [];
    return {
      kind: 'rules exchanged' as const,
      at,
      id: `with ${other.name}`,
      words: () => `the rules of ${name} and ${other.name} are probably exchanged`,
      repairs: [
        { at, moves: theirs },
        { at: other.at, moves },
      ],
      cost: 0.5 + Math.log(others.length),
    };
  });
};

function isSame(a: { x: number; y: number }, b: { x: number; y: number } | undefined): boolean {
  return a.x === b?.x && a.y === b.y;
}
