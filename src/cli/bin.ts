#!/usr/bin/env node
import { faultMessage, streamFaultMessage } from './fault';
import { processIo } from './io';
import { main } from './main';

for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that goes away, as `head` does, has seen what it wanted.
    if (error.code === 'EPIPE') return;
    if (stream === process.stdout) process.stderr.write(streamFaultMessage(error));
    process.exitCode = 3;
  });
}

try {
  const code = await main(process.argv.slice(2), processIo());
  // A stream that failed meanwhile has the last word.
  process.exitCode ??= code;
} catch (error) {
  process.stderr.write(faultMessage(error));
  process.exitCode = 3;
}
