/** The types of the linter's rules, which it names only in those of its tester. */
import type { RuleTester } from 'oxlint/plugins-dev';

/** A rule as `RuleTester` takes it, with what is made of a file. */
export type Rule = Extract<Parameters<RuleTester['run']>[1], { create: unknown }> & {
  createOnce?: never;
};

/** What a rule is told of a file and reports to. */
export type Context = Parameters<NonNullable<Rule['create']>>[0];

/** What the guards use of a node of a file's tree. */
export type Node = Parameters<Context['sourceCode']['getCommentsBefore']>[0] & {
  readonly type: string;
  readonly value?: unknown;
  readonly parent: Node;
};

/** Where a node stands: lines from 1, columns from 0. */
export interface Location {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}
