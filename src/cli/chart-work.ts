/** What the commands about charts run, loaded together: one large file is sooner read than many. */
export { chartCommand } from './chart-command';
export { checkCommand } from './check-command';
