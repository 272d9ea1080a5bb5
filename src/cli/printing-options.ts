/** The options by which sheets are printed, of every command that does. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { BOOKLETS } from '../print/booklet/booklet';
import { JOINS } from '../print/print-options';
import { list } from './options';

/** `--paper`; `taken` says what is taken without it. */
export function paperOption(taken = ''): Option {
  return new Option(
    '--paper <a,b,c>',
    `a4, a3, a2, a1, a0, letter, tabloid, a4-letter, roll=<width>, projector${taken}`,
  ).argParser(list);
}

/** Adds `--paper` and how its sheets are made. */
export function withPrinting(command: Command, paper = paperOption()): Command {
  return command
    .addOption(paper)
    .option('--margin <length>', 'what the printer leaves blank along each side (10mm)')
    .addOption(
      new Option('--booklet <kind>', 'words before the sheets: size, cloth, sewing (full)').choices(
        BOOKLETS,
      ),
    )
    .addOption(
      new Option('--join <way>', 'glue sheets on a strip, or edge to edge (overlap)').choices(
        JOINS,
      ),
    );
}
