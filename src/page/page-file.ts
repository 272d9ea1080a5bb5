/** The page as one file: what it is made of, and the state it opens with. */
import { markupText } from '../render/markup';
import type { PageState } from './state';

/** The parts of a page, each as the text that stands in it. */
export interface PageParts {
  /** What its scripts and style may do; names them by their digests. */
  readonly policy: string;
  readonly style: string;
  /** What shows the page. */
  readonly app: string;
  /** What grades, packed by gzip and written in base 64. */
  readonly engine: string;
}

/** The places of the parts, by which a page finds them in itself. */
export const PART_IDS = { style: 'look', app: 'app', engine: 'engine', state: 'state' } as const;

const WITHOUT_SCRIPT =
  'This page drafts and grades a skirt in your browser, which needs JavaScript for it.';

/**
 * The whole file. The same parts and state give the same bytes, whether they are written by the command or
 * by a page that saves itself.
 */
export function pageFile({ policy, style, app, engine }: PageParts, state: PageState): string {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${markupText(policy)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    `<title>${markupText(state.chart.file)}, graded</title>`,
    `<style id="${PART_IDS.style}">${style}</style>`,
    '</head>',
    '<body>',
    `<noscript>${WITHOUT_SCRIPT}</noscript>`,
    '<div id="page"></div>',
    `<script type="application/json" id="${PART_IDS.state}">${dataText(state)}</script>`,
    `<script type="text/plain" id="${PART_IDS.engine}">${engine}</script>`,
    `<script id="${PART_IDS.app}">${app}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** What a script and a style of these digests may do: no request to anywhere, no script but these. */
export function policyOf(digests: { readonly app: string; readonly style: string }): string {
  return [
    "default-src 'none'",
    `script-src 'sha256-${digests.app}'`,
    `style-src 'sha256-${digests.style}'`,
    'img-src data: blob:',
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** A state as data that ends no script and opens no comment. */
function dataText(state: PageState): string {
  return JSON.stringify(state).replace(/[<\u2028\u2029]/gu, unicodeEscape);
}

function unicodeEscape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
