/** The library: the whole engine as pure functions over text and values. It touches no file. */
export { gradeChart } from './jobs/grade-chart';
export type { GradeRequest, GradeResult } from './jobs/grade-chart';
export { resultFiles } from './files/result-files';
export { cutPieces } from './pattern/cut-pieces';
export type { CutPiece, Notch } from './pattern/cut-piece';
export type { BinaryFile, ResultFile } from './files/result-files';
export { printFiles } from './files/print-files';
export { printPattern } from './files/print-pattern';
export type { PrintFile } from './files/print-files';
export type { PrintRequest } from './print/print-options';
export { gradePattern } from './jobs/grade-pattern';
export type { NamedText, PatternRequest, PatternResult } from './jobs/grade-pattern';
export { patternFiles } from './files/pattern-files';
export { gradeSpec, specFiles } from './jobs/grade-spec';
export type { SpecRequest, SpecResult } from './jobs/grade-spec';
export type { DxfResult } from './files/dxf-files';
export { patternDxf, skirtDxf } from './files/dxf-files';
export { readChart } from './chart/read-chart';
export { writeChart } from './chart/write-chart';
export type { MeasurementRow, SizeChart } from './chart/size-chart';
export { readStyle } from './draft/style-file';
export type { StyleChoice } from './draft/style-file';
export { STYLES } from './draft/styles';
export type { Setting } from './draft/setting';
export type { Style } from './draft/styles';
export type { GradedRange, GradedSize } from './grade/graded-range';
export { measureOf } from './grade/graded-range';
export type { PointRule, Rule, RuleFormulas, RuleKind } from './grade/rule-formula';
export { stepsOf } from './grade/rules';
export type { GradeRules } from './grade/rules';
export type { Finding, Severity } from './check/finding';
export type { Piece, PiecePlan, Edge } from './pattern/piece';
export { outlineSegments, pointOf, seamLength } from './pattern/piece';
export { turnUp } from './pattern/turn-up';
export type { TurnUp } from './pattern/turn-up';
export { markSheet } from './study/mark/mark-sheet';
export type { MarkRequest, Marking } from './study/mark/mark-sheet';
export { derivation } from './study/explain/derivation';
export type { Derivation } from './study/explain/derivation';
export { inferIncrements } from './study/infer/infer-increments';
export type { InferRequest, Inference } from './study/infer/infer-increments';
export { exercise } from './study/exercise/exercise';
export type { Exercise, ExerciseRequest } from './study/exercise/exercise';
export { InputError } from './errors';
export type { InputErrorCode, Place } from './errors';
export type { LengthUnit } from './units';
export { fromMillimeters, toMillimeters } from './units';
export { fabricFiles } from './files/fabric-files';
export { patternFabric } from './files/pattern-fabric';
export { fabricNeeds, leastNeed } from './fabric/fabric-needs';
export type {
  BuyLength,
  CutSize,
  FabricNeed,
  FabricOptions,
  SizeNeed,
} from './fabric/fabric-needs';
export type { Cloth, ClothName, ClothWidth, Fold, Nap } from './fabric/cloth';
export type { Lay, NoLay, Placement } from './fabric/lay';
