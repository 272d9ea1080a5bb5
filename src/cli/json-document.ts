/** What `--json` gives: one document a call, the same for every command but for its result. */
import { InputError, cut } from '../errors';
import { VERSION } from '../render/version';
import type { ExitCode, Io } from './io';
import { optionMessage } from './option-words';

/** Counts up when a field changes its meaning or goes; fields that are added leave it as it is. */
const DOCUMENT_VERSION = 1;

/** Decimals of a number: a ten-thousandth of a millimeter or of a degree. No tolerance: of what is written. */
const DECIMALS = 4;
/** Characters of a message. */
const LONGEST = 2_000;

/** How much a command tells, and whether to a person; each command has what `withTelling` gives it. */
export interface Telling {
  /** Tables and every finding in words, those that held only counted. */
  readonly verbose?: boolean | undefined;
  /** Nothing but the files that were written, or a line where a command writes none. */
  readonly quiet?: boolean | undefined;
  readonly json?: boolean | undefined;
}

/** What a command has to tell, in words and as values; only what is asked for is made. */
export interface Answer {
  readonly exitCode: ExitCode;
  /** Whole lines. */
  readonly words: () => string;
  /** Whole lines for `quiet`; absent where there is no file to tell. */
  readonly brief?: (() => string) | undefined;
  /** Names in snake_case, lengths in mm. */
  readonly facts: () => object;
}

/**
 * Tells an answer in as many words as are asked for, or as a document; gives its exit code. Throws InputError
 * `bad-option` where only files are to be told, and none is written.
 */
export function tell(
  io: Io,
  command: string,
  { json = false, quiet = false }: Telling,
  { exitCode, words, brief = refuseQuiet, facts }: Answer,
): ExitCode {
  if (json) io.out(documentText(command, exitCode, { result: facts() }));
  else io.out(quiet ? brief() : words());
  return exitCode;
}

function refuseQuiet(): never {
  throw new InputError('bad-option', {
    what: 'only the files written are to be told, and none is',
    allowed: 'together with --out',
    place: { field: 'quiet' },
  });
}

/** What a refusal says: its code, its message as a person reads it, and where the trouble is. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly place?: object;
  readonly did_you_mean?: readonly string[];
}

/** The refusal of wrong input; its place has options in the place of fields. */
export function refusalOf(error: InputError): Refusal {
  const { near } = error.problem;
  return {
    code: error.code,
    message: optionMessage(error),
    place: error.place,
    ...(near === undefined ? {} : { did_you_mean: near }),
  };
}

/** The document of a call that was refused or failed. */
export function refusalText(
  argv: readonly string[],
  exitCode: number,
  { message, ...rest }: Refusal,
): string {
  const command = argv.find((argument) => !argument.startsWith('-')) ?? '';
  return documentText(cut(command, LONGEST), exitCode, {
    error: { ...rest, message: cut(message, LONGEST) },
  });
}

/** True where a call asks for a document, whatever else is wrong with it. */
export function wantsDocument(argv: readonly string[]): boolean {
  return argv.includes('--json');
}

function documentText(command: string, exitCode: number, body: object): string {
  const document = {
    document_version: DOCUMENT_VERSION,
    program: `skirtgrade ${VERSION}`,
    command,
    exit_code: exitCode,
    ...body,
  };
  return `${JSON.stringify(document, rounded, 2)}\n`;
}

/** Numbers that JSON has no word for are told as text. */
function rounded(_key: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  return Number.isFinite(value) ? Number(value.toFixed(DECIMALS)) : String(value);
}
