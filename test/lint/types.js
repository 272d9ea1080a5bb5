/** What the compiler says of a file, from the program that lint has built of it anyway. */
import ts from 'typescript';

/** @type {WeakSet<import('typescript').Program>} programs whose own faults are told */
const told = new WeakSet();

/** @type {import('eslint').Rule.RuleModule} */
export const types = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      fault: 'TS{{ code }}: {{ text }}',
      unbuilt: 'No program has been built for this file, so nothing is known of its types.',
    },
  },
  create(context) {
    const services = /** @type {unknown} */ (context.sourceCode.parserServices);
    const { program } = /** @type {{ program?: import('typescript').Program | null }} */ (services);
    return {
      'Program:exit'(node) {
        const file = program?.getSourceFile(context.filename);
        if (program == null || file === undefined) {
          context.report({ node, messageId: 'unbuilt' });
          return;
        }
        const whole = told.has(program)
          ? []
          : [...program.getOptionsDiagnostics(), ...program.getGlobalDiagnostics()];
        told.add(program);
        const own = [
          ...program.getSyntacticDiagnostics(file),
          ...program.getSemanticDiagnostics(file),
        ];
        for (const { code, messageText, start } of [...whole, ...own]) {
          const at = file.getLineAndCharacterOfPosition(start ?? 0);
          const text = ts.flattenDiagnosticMessageText(messageText, '\n');
          context.report({
            loc: { line: at.line + 1, column: at.character },
            messageId: 'fault',
            data: { code: String(code), text },
          });
        }
      },
    };
  },
};
