/** The state of a page as a project file, by which the command line does the same. */
import { writtenCsv } from '../table/written-csv';
import type { PageState } from './state';
import type { Wanted } from './wish';

/** `parameter,value`: the chart, what is asked of it and what is written, then the settings. */
export function projectText(
  { chart, styleFile, project, asked }: PageState,
  wanted: Wanted,
): string {
  const { set = {}, style, base, ...others } = asked;
  const named = styleFile?.file ?? style;
  const rows: [name: string, value: string | undefined][] = [
    ['chart', chart.file],
    ['base', base],
    ['style', named],
    ...Object.entries(others).map(([name, value]): [string, string] => [name, valueText(value)]),
    ...wanted.exports.map((name): [string, string] => [name, 'yes']),
    ['paper', wanted.papers.length === 0 ? undefined : valueText(wanted.papers)],
    ['booklet', wanted.papers.length === 0 ? undefined : wanted.booklet],
    ...(project?.settings ?? [])
      .filter(({ parameter }) => !(parameter in set))
      .map(({ parameter, value }): [string, string] => [parameter, valueText(value)]),
    ...Object.entries(set),
  ];
  const told = rows.filter(([, value]) => value !== undefined && value !== '');
  return writtenCsv([['parameter', 'value'], ...told]);
}

/** Lists as the command line takes them, a part with a comma in double quotes; true as yes. */
function valueText(value: unknown): string {
  if (value === true) return 'yes';
  if (typeof value === 'string' || typeof value === 'number') return `${value}`;
  if (!Array.isArray(value)) return '';
  return value
    .map(String)
    .map((part) => (/[",]/u.test(part) ? `"${part.replaceAll('"', '""')}"` : part))
    .join(',');
}
