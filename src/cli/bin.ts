#!/usr/bin/env node
import { expectBriefRun } from './brief-run';
import { faultMessage, streamFaultMessage } from './fault';
import { processIo } from './io';
import { refusalText, wantsDocument } from './json-document';
import { main } from './main';

/** Exit code where what the program says cannot be written, which is no fault of its own. */
const UNHEARD = 4;
/** Where results were written. */
let folder: string | undefined;

expectBriefRun();

for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that goes away, as `head` does, has seen what it wanted.
    if (error.code === 'EPIPE') return;
    if (stream === process.stdout) process.stderr.write(streamFaultMessage(error, folder));
    process.exitCode = UNHEARD;
  });
}

try {
  const io = processIo();
  const code = await main(process.argv.slice(2), {
    ...io,
    write: async (...call) => {
      const written = await io.write(...call);
      ({ folder } = written);
      return written;
    },
  });
  // A stream that failed meanwhile has the last word.
  process.exitCode ??= code;
} catch (error) {
  const argv = process.argv.slice(2);
  const message = faultMessage(error).trimEnd();
  process.stderr.write(`${message}\n`);
  if (wantsDocument(argv)) process.stdout.write(refusalText(argv, 3, { code: 'fault', message }));
  process.exitCode = 3;
}
