/** The heading of a column of moves: `dx_in`, `step_dy_cm`, `dx (mm)`, `dy`. */
import { unitNamed } from '../chart/unit-name';
import type { LengthUnit } from '../units';
import type { Axis, Form } from './rule-sheet';

export interface MoveColumn {
  readonly axis: Axis;
  readonly form: Form;
  /** Undefined where the heading names no unit. */
  readonly unit: LengthUnit | undefined;
}

const HEADING = /^(?<step>step[ _]?)?d[ _]?(?<axis>[xy])[ _]*(?<unit>.*)$/iu;

/** What a heading says its column holds, or undefined if it is no column of moves. */
export function moveColumn(text: string): MoveColumn | undefined {
  const parts = HEADING.exec(text.trim())?.groups;
  if (parts === undefined) return undefined;
  const axis = parts.axis?.toLowerCase() === 'y' ? 'y' : 'x';
  const form = parts.step === undefined ? 'move' : 'step';
  const named = (parts.unit ?? '').replace(/[()[\]]/gu, '').trim();
  if (named === '') return { axis, form, unit: undefined };
  const unit = unitNamed(named);
  return unit === undefined ? undefined : { axis, form, unit };
}
