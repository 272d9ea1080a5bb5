/** Words as they stand in SVG and HTML. */

/** Words that need no escaping, which are nearly all: printable ASCII. */
const PLAIN = /^[ !#-%(-;=?-~]*$/;
/** Characters that XML 1.0 does not allow at all, not even escaped. */
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

/** A text in an element or an attribute, all that means something there written by its number or its name. */
export function markupText(words: string): string {
  if (PLAIN.test(words)) return words;
  return words
    .replace(NOT_XML, '\ufffd')
    .replace(/[&<>"'\t\n\r]/g, (character) => ENTITIES[character] ?? character);
}
