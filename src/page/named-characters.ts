/** Characters that mean something in markup, as they are written in a text of it (HTML, section 13.1.4). */
export const NAMED_CHARACTERS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
