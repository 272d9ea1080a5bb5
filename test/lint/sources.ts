/** The files of src, for tests that look at the code itself. */
import { readFileSync, readdirSync } from 'node:fs';
import ts from 'typescript';

/** Paths of all files below src, without `src/`: `grade/stack.ts`. */
export function sourceFiles(): readonly string[] {
  return readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .sort();
}

/** The texts of all string literals and templates of a file, its imports and comments left out. */
export function literalsOf(text: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (
      ts.isStringLiteralLike(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddleOrTemplateTail(node)
    )
      found.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('one.ts', text, ts.ScriptTarget.Latest));
  return found;
}

/** The literals of a file of src. */
export function literalsIn(file: string): readonly string[] {
  return literalsOf(readFileSync(`src/${file}`, 'utf8'));
}
