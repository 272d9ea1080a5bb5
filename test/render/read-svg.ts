/** A strict reader of the XML that a drawing may use, so that tests see what a viewer sees. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly Element[];
  readonly text: string;
}

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
  text: string;
}

const DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>';
const TAG =
  /<(?<close>\/?)(?<name>[A-Za-z][\w-]*)(?<attributes>(?:\s+[A-Za-z][\w:-]*="[^"<]*")*)(?<self>\/?)>/y;
const ATTRIBUTE = /\s+([A-Za-z][\w:-]*)="([^"<]*)"/g;
const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Reads a document; throws on anything that is not well-formed. */
export function readSvg(document: string): Element {
  if (!document.startsWith(DECLARATION)) throw new Error('no XML declaration');
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(document))
    throw new Error('a character that XML does not allow');
  const roots: Element[] = [];
  const stack: Open[] = [];
  let at = DECLARATION.length;
  while (at < document.length) {
    const next = document.indexOf('<', at);
    const words = document.slice(at, next < 0 ? undefined : next);
    const parent = stack.at(-1);
    if (parent !== undefined) parent.text += decoded(words);
    else if (words.trim() !== '') throw new Error(`text outside the root: ${words}`);
    if (next < 0) break;
    TAG.lastIndex = next;
    const tag = TAG.exec(document)?.groups;
    if (tag === undefined) throw new Error(`no tag at ${document.slice(next, next + 60)}`);
    at = TAG.lastIndex;
    if (tag.close === '/') {
      const closed = stack.pop();
      if (closed === undefined || closed.name !== tag.name)
        throw new Error(`</${tag.name}> closes ${closed?.name ?? 'nothing'}`);
      (stack.at(-1)?.children ?? roots).push(closed);
      continue;
    }
    const open = {
      name: tag.name ?? '',
      attributes: attributesOf(tag.attributes ?? ''),
      children: [],
      text: '',
    };
    if (tag.self === '/') (stack.at(-1)?.children ?? roots).push(open);
    else stack.push(open);
  }
  const [root, ...others] = roots;
  if (root === undefined || others.length > 0 || stack.length > 0) throw new Error('not one root');
  return root;
}

function attributesOf(text: string): Map<string, string> {
  const attributes = new Map<string, string>();
  for (const [, name = '', value = ''] of text.matchAll(ATTRIBUTE)) {
    if (attributes.has(name)) throw new Error(`attribute ${name} twice`);
    attributes.set(name, decoded(value));
  }
  return attributes;
}

function decoded(text: string): string {
  return text.replace(/&([^;]*);?/g, (entity, name: string) => {
    if (!entity.endsWith(';')) throw new Error(`bare ampersand in ${text}`);
    const plain = name.startsWith('#')
      ? String.fromCodePoint(Number(name.slice(1)))
      : ENTITIES[name];
    if (plain === undefined) throw new Error(`unknown entity ${entity}`);
    return plain;
  });
}

/** The element and all below it. */
export function all(element: Element | undefined): readonly Element[] {
  return element === undefined ? [] : [element, ...element.children.flatMap(all)];
}

export function get(element: Element | undefined, attribute: string): string {
  return element?.attributes.get(attribute) ?? '';
}

/** Elements with this value of an attribute, in or below `root`. */
export function having(
  root: Element | undefined,
  attribute: string,
  value: string,
): readonly Element[] {
  return all(root).filter((element) => get(element, attribute) === value);
}

/** All coordinates of path data as pairs, handles included. */
export function pathPoints(path: Element | undefined): readonly (readonly [number, number])[] {
  const data = get(path, 'd');
  if (!/^(?:M[-\d. ]+|L[-\d. ]+|C[-\d. ]+|Z)+$/.test(data)) throw new Error(`path data ${data}`);
  const numbers = (data.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => [
    numbers[2 * i] ?? NaN,
    numbers[2 * i + 1] ?? NaN,
  ]);
}
