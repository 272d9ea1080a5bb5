/** What the commands that make a pattern run, loaded together: one large file is sooner read than many. */
export { gradeCommand, patternCommand } from './grade-command';
export { printCommand } from './print-command';
