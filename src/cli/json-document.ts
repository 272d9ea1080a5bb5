/** What `--json` gives: one document a call, the same for every command but for its result. */
import type { InputError } from '../errors';
import { cut } from '../errors';
import { VERSION } from '../render/version';
import type { ExitCode, Io } from './io';
import { optionMessage } from './option-words';

/** Counts up when a field changes its meaning or goes; fields that are added leave it as it is. */
const DOCUMENT_VERSION = 1;

/** Decimals of a number: a ten-thousandth of a millimeter or of a degree. No tolerance: of what is written. */
const DECIMALS = 4;
/** Characters of a message. */
const LONGEST = 2_000;

/** The option of every command that has something to tell. */
export interface AsDocument {
  readonly json?: boolean;
}

/** What a command has to tell, in words and as values; only what is asked for is made. */
export interface Answer {
  readonly exitCode: ExitCode;
  /** Whole lines. */
  readonly words: () => string;
  /** Names in snake_case, lengths in mm. */
  readonly facts: () => object;
}

/** Tells an answer in words, or as a document where `json` is true; gives its exit code. */
export function tell(
  io: Io,
  command: string,
  json: boolean | undefined,
  { exitCode, words, facts }: Answer,
): ExitCode {
  io.out(json === true ? documentText(command, exitCode, { result: facts() }) : words());
  return exitCode;
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
