/** One call of the command line in this process, without any test about it. */
import { filesFrom } from '../../src/cli/io';
import { main } from '../../src/cli/main';

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** One call whose relative paths start in a folder. */
export async function runIn(
  folder: string,
  args: readonly string[],
  { color = false } = {},
): Promise<Run> {
  let [stdout, stderr] = ['', ''];
  const status = await main(args, {
    ...filesFrom(folder),
    out: (text) => void (stdout += text),
    error: (text) => void (stderr += text),
    color,
  });
  return { status, stdout, stderr };
}
