/** The file of a page: what stands in it can be read back, and ends nothing that it stands in. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pageFile, policyOf } from '../../src/page/page-file';
import type { PageState } from '../../src/page/state';
import { FIRST_LOOKS } from '../../src/page/state';

const PARTS = { policy: policyOf({ app: 'a', style: 'b' }), style: '', app: '', engine: '' };

it('holds any text of a chart, and no text of a chart is markup', () => {
  const nasty = fc.oneof(
    fc.string(),
    fc.constantFrom('</script>', '<!--<script>', '\u2028', '"&quot;', '<title>'),
  );
  fc.assert(
    fc.property(nasty, nasty, (text, file) => {
      const state: PageState = { chart: { text, file }, asked: { base: text }, looks: FIRST_LOOKS };
      const page = pageFile(PARTS, state);
      const tags = [...page.matchAll(/<(\/?[a-z!][a-z-]*)/giu)].map(([, tag]) => tag);
      expect(tags).toEqual([
        ...['!doctype', 'html', 'head', 'meta', 'meta', 'meta', 'meta', 'title', '/title'],
        ...['style', '/style', '/head', 'body', 'noscript', '/noscript', 'div', '/div'],
        ...['script', '/script', 'script', '/script', 'script', '/script', '/body', '/html'],
      ]);
      const data = /id="state">([^<]*)</u.exec(page)?.[1] ?? '';
      expect(JSON.parse(data)).toEqual(state);
    }),
  );
});
