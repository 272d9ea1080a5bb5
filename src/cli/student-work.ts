/** What the commands of a student run, loaded together: one large file is sooner read than many. */
export { assessCommand } from './assess-command';
export { exerciseCommand } from './exercise-command';
export { explainCommand } from './explain-command';
export { inferCommand } from './infer-command';
