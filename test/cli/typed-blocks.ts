/** What a reader of README or help is told to type: calls, and files to save. */

/** One block of lines to type, and the words right above it. */
export interface TypedBlock {
  readonly above: string;
  readonly text: string;
}

/** Blocks between fences. */
export function fencedBlocks(markdown: string): readonly TypedBlock[] {
  const parts = markdown.split(/^```\w*\n/mu);
  return parts.flatMap((text, i) =>
    i % 2 === 1 ? [{ above: lastParagraph(parts[i - 1] ?? ''), text }] : [],
  );
}

/** Blocks indented by two blanks below an empty line, as help has them. */
export function indentedBlocks(help: string): readonly TypedBlock[] {
  const paragraphs = help.split(/\n{2,}|(?<=:)\n/u);
  return paragraphs.flatMap((paragraph, i) => {
    const lines = paragraph.replace(/\n$/u, '').split('\n');
    if (!lines.every((line) => line.startsWith('  '))) return [];
    return [
      { above: paragraphs[i - 1] ?? '', text: lines.map((line) => `${line.slice(2)}\n`).join('') },
    ];
  });
}

/** The calls of a block, each as its arguments. */
export function callsIn({ text }: TypedBlock): readonly (readonly string[])[] {
  return text
    .split('\n')
    .filter((line) => line.startsWith('skirtgrade '))
    .map(argumentsOf);
}

/** As a shell parts them, double quotes apart. */
export function argumentsOf(line: string): readonly string[] {
  const words = [...line.matchAll(/(?:[^\s"]|"[^"]*")+/gu)];
  return words.slice(1).map(([word]) => word.replaceAll('"', ''));
}

function lastParagraph(text: string): string {
  return text.trim().split('\n\n').at(-1) ?? '';
}
