/** One call of the command line in this process, without any test about it. */
import { filesFrom } from '../../src/cli/io';
import type { Converse } from '../../src/cli/conversation';
import { main } from '../../src/cli/main';

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  /** Its messages, each in one line whatever its length. */
  readonly stderr: string;
  /** The same as it is shown, in lines of at most 80 columns. */
  readonly shown: string;
}

interface Surroundings {
  readonly color?: boolean;
  readonly input?: string;
  readonly progress?: (words: string) => void;
  readonly converse?: Converse;
}

/** One call whose relative paths start in a folder; `input` is its standard input. */
export async function runIn(
  folder: string,
  args: readonly string[],
  { color = false, input = '', progress = (): void => undefined, converse }: Surroundings = {},
): Promise<Run> {
  let [stdout, stderr] = ['', ''];
  const status = await main(args, {
    ...filesFrom(folder, () => ({ bytes: Buffer.from(input), identity: 'stdin' })),
    out: (text) => void (stdout += text),
    error: (text) => void (stderr += text),
    color,
    progress,
    ...(converse === undefined ? {} : { converse }),
  });
  return { status, stdout, stderr: stderr.replace(/\n {2}(?=\S)/gu, ' '), shown: stderr };
}
