/** The library: the whole engine as pure functions over text and values. It touches no file. */
export { gradeChart } from './jobs/grade-chart';
export { gradePattern } from './jobs/grade-pattern';
export type { Drafted, Grade, GradeResult } from './jobs/grade-result';
export { gradeSpec } from './jobs/grade-spec';
export type { SpecRequest, SpecResult } from './jobs/grade-spec';
export type { GradeRequest, NamedText, PatternRequest, RangeRequest } from './jobs/requests';
export { resultFiles } from './files/result-files';
export { reportFile } from './files/report-file';
export { COMPARED_FILES, changesSince } from './files/since-last-run';
export type { NamedTexts } from './files/changes/rows';
export type { Changes } from './files/since-last-run';
export { EXPORTS, exportFiles } from './files/exports';
export type { Export, Exported } from './files/exports';
export { printFiles } from './files/print-files';
export type { BinaryFile, ResultFile } from './files/result-file';
export type { PrintFile } from './print/print-drawing';
export type { PrintRequest } from './print/print-options';
export type { Pattern, PatternPiece } from './pattern/pattern';
export type { SeamPair, SeamSide } from './pattern/seam-pair';
export { cutPieces } from './pattern/cut-pieces';
export type { CutPiece, Notch } from './pattern/cut-piece';
export { readChart } from './chart/read-chart';
export { writeChart } from './chart/write-chart';
export type { MeasurementRow, SizeChart } from './chart/size-chart';
export { readStyle } from './draft/style-file';
export type { StyleChoice } from './draft/style-file';
export { STYLES } from './draft/styles';
export type { Setting } from './draft/setting';
export type { Style } from './draft/styles';
export type {
  DraftedPattern,
  GradedPattern,
  RangeDraft,
  SizeDraft,
  SizedPattern,
} from './grade/graded-pattern';
export { measureOf } from './grade/graded-pattern';
export type { PointRule, Rule, RuleFormulas, RuleKind } from './grade/rule-formula';
export { stepsOf } from './grade/rules';
export type { GradeRules } from './grade/rules';
export { CHECKS, checkPattern } from './check/checks';
export type { Check, CheckContext } from './check/checks';
export type { Finding, Severity } from './check/finding';
export type { Piece, PiecePlan, Edge } from './pattern/piece';
export { outlineSegments, pointOf, seamLength } from './pattern/piece';
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
