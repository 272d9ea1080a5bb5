/** What `help` knows besides the commands: texts of whole pages, each kept as a file. */
import allowances from './help/allowances.txt';
import assessing from './help/assessing.txt';
import bodies from './help/bodies.txt';
import charts from './help/charts.txt';
import cloth from './help/cloth.txt';
import populations from './help/populations.txt';
import exchange from './help/exchange.txt';
import files from './help/files.txt';
import grading from './help/grading.txt';
import json from './help/json.txt';
import ownPattern from './help/own-pattern.txt';
import printing from './help/printing.txt';
import projects from './help/projects.txt';
import rounding from './help/rounding.txt';
import sizes from './help/sizes.txt';
import spec from './help/spec.txt';
import styleFiles from './help/style-files.txt';
import tables from './help/tables.txt';
import walking from './help/walking.txt';
import words from './help/words.txt';

/**
 * By the name that is typed, in the order of a list: lines of at most 80 columns, of which the first says
 * what the topic is.
 */
export const TOPICS: ReadonlyMap<string, string> = new Map([
  ['grading', grading],
  ['charts', charts],
  ['tables', tables],
  ['style-files', styleFiles],
  ['projects', projects],
  ['walking', walking],
  ['sizes', sizes],
  ['bodies', bodies],
  ['populations', populations],
  ['rounding', rounding],
  ['allowances', allowances],
  ['own-pattern', ownPattern],
  ['spec', spec],
  ['printing', printing],
  ['cloth', cloth],
  ['exchange', exchange],
  ['assessing', assessing],
  ['files', files],
  ['json', json],
  ['words', words],
]);
