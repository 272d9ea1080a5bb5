/** `skirtgrade help`: a command, a topic, the points of a style, or a screen of the course. */
import type { Command } from 'commander';
import { InputError } from '../errors';
import { MOST_NEAR, nearNames } from '../table/near-names';
import { screenText } from './grading-course';
import { TOPICS } from './help-topics';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { pointsText } from './points-text';
import { textTable } from './text-table';

/** The topic with a line for each word of the trade. */
const GLOSSARY = 'words';

/** The topic that is made for a style. */
const POINTS = 'points';

/** The topic that has screens. */
const COURSE = 'grading';

/**
 * Tells the topic, or without one what there is; `part` is the style of `help points`
 * or the screen of `help grading`. Throws InputError
 * `bad-option` for a topic that is not there, and `style-unknown`.
 */
export function helpCommand(
  program: Command,
  topic: string | undefined,
  part: string | undefined,
  { json }: Telling,
  io: Io,
): ExitCode {
  const text = textOf(program, topic, part);
  return tell(
    io,
    'help',
    { json },
    {
      exitCode: 0,
      words: () => text,
      facts: () => ({ topic: topic ?? '', text }),
    },
  );
}

function textOf(program: Command, topic: string | undefined, part: string | undefined): string {
  if (topic === POINTS) return pointsText(part);
  if (topic === COURSE && part !== undefined) return screenText(part);
  if (part !== undefined)
    throw new InputError('bad-option', {
      what: `only ${POINTS} are those of a style, and only ${COURSE} has screens`,
      allowed: `skirtgrade help ${topic ?? ''}`,
      got: part,
    });
  if (topic === undefined) return `${fullHelp(program)}\n${topicsText()}`;
  const command = program.commands.find((one) => one.name() === topic);
  if (command !== undefined) return fullHelp(command);
  const text = TOPICS.get(topic);
  if (text !== undefined) return text;
  const names = [...TOPICS.keys(), POINTS, ...program.commands.map((one) => one.name())];
  const near = nearNames(topic, names);
  const telling = near.length > 0 ? near : topicsWith(topic);
  throw new InputError('bad-option', {
    what: 'there is no help of this name',
    ...(telling.length > 0 ? { near: telling } : { allowed: 'what skirtgrade help lists' }),
    got: topic,
  });
}

/** The topics that have a word: those first that say it in their first line or explain it, then those that have it most. */
function topicsWith(word: string): readonly string[] {
  const sought = word.toLowerCase();
  return [...TOPICS]
    .map(([name, text]) => {
      const lines = text.toLowerCase().split('\n');
      const isSubject =
        lines[0]?.includes(sought) === true ||
        (name === GLOSSARY && lines.some((line) => line.startsWith(`  ${sought}`)));
      return { name, isSubject, count: text.toLowerCase().split(sought).length - 1 };
    })
    .filter(({ count }) => count > 0)
    .toSorted((a, b) => Number(b.isSubject) - Number(a.isSubject) || b.count - a.count)
    .slice(0, MOST_NEAR)
    .map(({ name }) => name);
}

/** The help of a command with all its options, and what stands below them. */
function fullHelp(command: Command): string {
  let text = '';
  command.configureOutput({ writeOut: (part) => void (text += part) });
  const { visibleOptions: _usual, ...rest } = command.configureHelp();
  command.configureHelp(rest);
  command.outputHelp();
  return text;
}

/** A line a topic. */
function topicsText(): string {
  const rows = [...TOPICS].map(([name, text]) => [`  ${name}`, text.slice(0, text.indexOf('\n'))]);
  rows.splice(3, 0, [
    `  ${POINTS} [style]`,
    'The points of a style, as rules and --stack name them',
  ]);
  return `Topics, by skirtgrade help <topic>:\n${textTable(rows, 2)}`;
}
