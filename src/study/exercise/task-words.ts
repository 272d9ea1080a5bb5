/** What an exercise asks for, in words. */
import type { Exercise } from './exercise';
import type { Lesson } from './lessons';
import { LESSONS } from './lessons';

/** Two paragraphs: what is graded and why, and what is filled in or put right. */
export function taskWords({
  difficulty,
  practices,
  unit,
  base,
  sizes,
}: Exercise): readonly [grade: string, fill: string] {
  const { points, set, zero, up, rounded, slip }: Lesson = LESSONS[difficulty];
  const task =
    slip === true
      ? 'One row of the finished sheet has a slip: find it and put it right. It tells'
      : 'Fill in';
  const [start, direction] = [zero ?? 'the center of the waist', up === true ? 'up' : 'down'];
  const more = [
    ...(points === undefined ? [] : [`Asked for are ${points.join(', ')}.`]),
    ...Object.entries(set ?? {}).map(([name, formula]) => `In each size ${name} = ${formula}.`),
    ...(rounded === true ? [`Round to ${unit === 'in' ? '1/16 in' : 'a millimeter'}.`] : []),
  ];
  return [
    `${slip === true ? 'check the grading of' : 'grade'} the front of a pencil skirt by the quarter method ` +
      `from base ${base} to ${sizes.filter((size) => size !== base).join(', ')}. It practices ` +
      `${practices}.`,
    [
      `${task} how far each point moves from the base size: dx from the center line to the ` +
        `side, dy ${direction}, zero at ${start}.`,
      ...more,
    ].join(' '),
  ];
}
