/** The option of `grade` that asks for DXF files. */
import { bySeverity } from '../check/finding';
import type { Finding } from '../check/finding';
import type { DxfResult } from '../files/dxf-files';
import type { ResultFile } from '../files/result-files';

/** The option as commander reads it. */
export interface DxfOptions {
  readonly dxf?: boolean;
}

/** The result with the findings of its DXF files, and these files; none if not asked for. */
export function withDxf<Graded extends { readonly findings: readonly Finding[] }>(
  result: Graded,
  { dxf = false }: DxfOptions,
  make: (result: Graded) => DxfResult,
): readonly [Graded, readonly ResultFile[]] {
  if (!dxf) return [result, []];
  const { files, findings } = make(result);
  return [{ ...result, findings: bySeverity([...result.findings, ...findings]) }, files];
}
