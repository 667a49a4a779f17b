// The stages in the order in which data flows. Everything is mm, radians, y up, positive area anticlockwise.

// What every stage speaks in: results, problems, findings, lengths.

export { formatLength } from './base/format-length.ts'
export { parseLength } from './base/lengths.ts'
export { nearestName } from './base/names.ts'
export { printable } from './base/printable.ts'
export type { Finding, Place, Problem, Remedy, Severity } from './base/problem.ts'
export { type Failure, failure, type Result, type Success, success } from './base/result.ts'
export type { BodySide } from './base/side.ts'
export { LENGTH_UNITS, type LengthUnit } from './base/units.ts'

// Begin, read, record: a performer file is written to be filled in, read, and a correction put into it.

export { addCorrection, type NewCorrection, type RecordedText, voidCorrection } from './add-correction.ts'
export type { JsonForm } from './base/json-forms.ts'
export type { JsonSchema } from './base/json-schema.ts'
export { type CorrectionReaders, makeReaders, type Reader, type Readers, type Written } from './base/readers.ts'
export type { Tree } from './base/yaml-document.ts'
export { type BeginOptions, beginPerformer } from './begin-performer.ts'
export { correctionReaders, readersOf } from './fitting/corrections.ts'
export type { Performer } from './performer.ts'
export { type ReadingOptions, readPerformer } from './performer-file.ts'
export { performerJsonSchema } from './performer-json-schema.ts'
export { readTakenChoices, type TakenChoices } from './taken-choices.ts'

// Body: the measures there are; what nobody took is estimated, and says so.

export { BEFORE_MEASURING, BODY_POINTS, type BodyPoint } from './body/before-measuring.ts'
export { type Body, type BodyHalf, type Measure, measureOf } from './body/body.ts'
export { type CompletedBody, completeBody } from './body/complete-body.ts'
export type { GivenMeasures } from './body/given.ts'
export { MEASURE_NAMES, MEASURES, type MeasureDefinition, type MeasureKind, type MeasureName } from './body/measure.ts'

// Draft: bodice front, bodice back and sleeve for a body.

export { MOCK_UP_ALLOWANCES, type MockUpAllowances, type SeamAllowances } from './drafting/allowances.ts'
export {
  type CapEase,
  type Choices,
  CLOTHS,
  type Cloth,
  EASE_NAMES,
  type EaseName,
  FITS,
  type Fit,
  OPENINGS,
  type Opening,
  STANDARD_CHOICES,
} from './drafting/choices.ts'
export type { Draft, MeasureRow } from './drafting/draft.ts'
export { draftPattern } from './drafting/draft-pattern.ts'

// The pattern: pieces of seams of paths, and the joins that sew them; readonly data, measured on the stitching lines.

export type { Box } from './geometry/bounds.ts'
export type { Cubic } from './geometry/cubic.ts'
export type { Path } from './geometry/path.ts'
export type { Point } from './geometry/point.ts'
export { cutLine } from './pattern/cut-line.ts'
export { outlineOf } from './pattern/outline.ts'
export type { EaseRange, Join, JoinPart, Pattern } from './pattern/pattern.ts'
export type { Dart, Landmark, Line, Notch, Piece, Seam, Side } from './pattern/piece.ts'
export { landmarkPoint, notchPoints, pieceOf, pointOnSeam, seamLength, seamOf } from './pattern/seam.ts'
export type { JoinLengths } from './pattern/sewn-line.ts'

// Fit: the fittings replayed on the draft, what became of every place, and the slip that says what was done.

export type { AllowanceRow } from './fitting/budget.ts'
export type { FigureChange, JoinChange, SeamChange } from './fitting/changes.ts'
export type { PieceComparison, PieceParts } from './fitting/compare-piece.ts'
export {
  compareVersions,
  type JoinDifference,
  type MovePeak,
  type SeamMove,
  type VersionComparison,
} from './fitting/compare-versions.ts'
export { type OfferedOptions, offeredDarts, offeredPlaces, offeredSeams } from './fitting/offered-places.ts'
export type { Half, SeamPlace } from './fitting/position.ts'
export {
  type Gone,
  IDENTITY,
  isGone,
  type Moved,
  type PiecePoint,
  type PositionMap,
  type SeamPosition,
} from './fitting/position-map.ts'
export { readPlaceWords } from './fitting/read-place-words.ts'
export type { CorrectionRecord, CorrectionSide, FittingRecord } from './fitting/record.ts'
export {
  type PatternVersion,
  type Replayed,
  type ReplayOptions,
  replay,
  type TruedInFitting,
} from './fitting/replay.ts'
export { sayPlace } from './fitting/resolve-place.ts'
export { type SettingKind, settingKinds } from './fitting/setting-kinds.ts'
export type { SlipEntry, SlipMove } from './fitting/slip.ts'
export { type SlipHead, slipText } from './fitting/slip-text.ts'
export { type TruedEdge, type TruedSeams, type TrueOptions, trueSeams } from './fitting/true-seams.ts'
export { versionUnder } from './fitting/version-under.ts'

// Corrections, the trade's and own ones: defined, and compiled to pattern operations that run one after the other.

export {
  type Correction,
  type CorrectionContext,
  type CorrectionDefinition,
  defineCorrection,
  type SettingDefault,
  type SlipWords,
  type StrictSettings,
} from './fitting/correction.ts'
export { CORRECTIONS } from './fitting/corrections.ts'
export {
  type CornerMade,
  type Effect,
  type Noticed,
  type OperationResult,
  type PatternOperation,
  runOperations,
  type SeamMoved,
  unchanged,
} from './fitting/operation.ts'

// The pattern operations that corrections are made of: move a line, cut and spread or turn, darts, marks, the cap.

export { type HingeOptions, hinge } from './fitting/hinge.ts'
export type { SeamPoint } from './fitting/outline-places.ts'
export { type ReMarkOptions, reMark } from './fitting/re-mark.ts'
export { type ResolveCapOptions, resolveCap } from './fitting/resolve-cap.ts'
export { type RotateDartOptions, rotateDart } from './fitting/rotate-dart.ts'
export { type SeamLine, type SeamName, seamLines } from './fitting/seam-names.ts'
export { type SetDartOptions, setDart } from './fitting/set-dart.ts'
export { type ShiftLineRequest, type ShiftStation, shiftLine } from './fitting/shift-line.ts'
export type { Anchor, Station } from './fitting/shift-profile.ts'
export { type ShiftSeamOptions, shiftSeam } from './fitting/shift-seam.ts'
export { type SlideDartOptions, slideDart } from './fitting/slide-dart.ts'
export { splitSides } from './fitting/split-sides.ts'
export { type SpreadOptions, spread } from './fitting/spread.ts'

// Advise: from what is seen on the body to the corrections to try.

export { ADVICE_PLACES, type AdviceCause, type AdviceEntry, type AdvicePlace } from './fitting/advice/advice.ts'
export { type Advice, type AdviceOptions, adviceFor } from './fitting/advice/advice-for.ts'

// Check: what a draper would look at again; the walk of every join; the report.

export type { Check, CheckContext, Found, WrittenCorrection } from './checks/check.ts'
export { CHECKS, type RunChecksOptions, runChecks } from './checks/checks.ts'
export { type CheckDefinition, defineCheck, type FoundAs } from './checks/define-check.ts'
export type { MovementRow } from './checks/movement.ts'
export { presentMeasures } from './checks/present-measures.ts'
export type { ReachForward } from './checks/reach-forward.ts'
export { makeReport, type Report, type ReportMeasure, type ReportOptions, walkJoins } from './checks/report.ts'
export type { WalkedJoin, WalkedSpan } from './checks/walk-join.ts'

// Lay out: pieces become a scene of marks, a scene becomes pages.

export { mirrorPairs } from './sheets/cut-pieces.ts'
export type { Estimate } from './sheets/estimate-words.ts'
export type { Segment } from './sheets/ink.ts'
export { type LayOutOptions, layOut } from './sheets/lay-out.ts'
export { type ComparedPiece, type DrawnMove, layOutComparison } from './sheets/lay-out-comparison.ts'
export {
  isOverlap,
  LEAST_OVERLAP,
  layOutTiles,
  MOST_OVERLAP,
  type TileOptions,
  type TilePage,
  type TileSet,
} from './sheets/lay-out-tiles.ts'
export { onePage } from './sheets/one-page.ts'
export type { PaperPages } from './sheets/paper-pages.ts'
export { PAPER_NAMES, type Paper, parsePaper } from './sheets/papers.ts'
export type { DrawingOptions } from './sheets/piece-drawings.ts'
export { parseSquareMeasured, type SquareMeasured } from './sheets/printer-error.ts'
export { layOutForProjector } from './sheets/projector-sheet.ts'
export type {
  FillMark,
  Mark,
  MarkKind,
  PieceDrawing,
  PlacedDrawing,
  Scene,
  SheetInfo,
  StrokeMark,
  TextMark,
} from './sheets/scene.ts'

// Explain: the draft as steps to draw by hand; `writeExplanation` makes and writes them.

export type { ExplanationJson, SectionJson, StepJson } from './explain/explanation-json.ts'
export type { Chord, Direction, Placing, Run, SaidNumber, StepLine } from './explain/step.ts'

// Write: the same scene, the same bytes; what SVG and PDF need is loaded when one is written.

export { type CastEntry, type CastIndexOptions, castIndex } from './writers/cast-index.ts'
export { type DxfOptions, writeDxf } from './writers/dxf.ts'
export {
  type JsonPoint,
  type LandmarkJson,
  type NotchJson,
  type PatternJson,
  type PatternJsonOptions,
  type PieceJson,
  patternJson,
  patternJsonText,
} from './writers/pattern-json.ts'
export { type PdfOptions, writePdf } from './writers/pdf.ts'
export { type SvgOptions, writeSvg } from './writers/svg.ts'
export { thumbnail } from './writers/thumbnail.ts'

// All of it: the main path on one page, and what is written of it: files, comparison, explanation, forms, viewing page.

export { type MadePattern, type MakeOptions, makePattern } from './pipeline.ts'
export {
  type ComparisonJson,
  type ComparisonOptions,
  type WrittenComparison,
  writeComparison,
  writePreview,
} from './write-comparison.ts'
export {
  EXPLANATION_FORMATS,
  type ExplanationFormat,
  type ExplanationOptions,
  type WrittenExplanation,
  writeExplanation,
} from './write-explanation.ts'
export {
  FORM_FORMATS,
  type FormFormat,
  type FormJson,
  type FormMeasure,
  type FormOptions,
  type FormSheet,
  type WrittenForms,
  writeForms,
} from './write-forms.ts'
export {
  FORMATS,
  type Format,
  type WriteOptions,
  type WrittenFile,
  type WrittenPattern,
  writePattern,
} from './write-pattern.ts'
export { type ViewJson, type ViewPageOptions, writeViewPage } from './write-view-page.ts'
