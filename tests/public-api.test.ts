import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { expect, test } from 'vitest'
import * as index from '../src/index.ts'

const root = fileURLToPath(new URL('..', import.meta.url))

/** What other people's programs may call. Adding to it is a feature, taking away from it breaks them. */
const VALUES = [
  // everywhere
  'formatLength',
  'parseLength',
  'nearestName',
  'LENGTH_UNITS',
  'printable',
  'success',
  'failure',
  // read
  'readPerformer',
  'beginPerformer',
  'makeReaders',
  'addCorrection',
  'voidCorrection',
  'settingKinds',
  'offeredPlaces',
  'offeredDarts',
  'offeredSeams',
  'readPlaceWords',
  'writePreview',
  'readTakenChoices',
  'performerJsonSchema',
  'correctionReaders',
  'readersOf',
  // body
  'BEFORE_MEASURING',
  'BODY_POINTS',
  'MEASURES',
  'MEASURE_NAMES',
  'completeBody',
  'measureOf',
  // draft
  'draftPattern',
  'STANDARD_CHOICES',
  'MOCK_UP_ALLOWANCES',
  'FITS',
  'CLOTHS',
  'OPENINGS',
  'EASE_NAMES',
  // pattern
  'pieceOf',
  'seamOf',
  'seamLength',
  'pointOnSeam',
  'notchPoints',
  'landmarkPoint',
  'outlineOf',
  'cutLine',
  // fit
  'replay',
  'CORRECTIONS',
  'defineCorrection',
  'seamLines',
  'shiftLine',
  'shiftSeam',
  'spread',
  'hinge',
  'setDart',
  'slideDart',
  'rotateDart',
  'reMark',
  'resolveCap',
  'splitSides',
  'trueSeams',
  'runOperations',
  'unchanged',
  'IDENTITY',
  'isGone',
  'slipText',
  'sayPlace',
  'compareVersions',
  // advise
  'ADVICE_PLACES',
  'adviceFor',
  // check
  'CHECKS',
  'defineCheck',
  'runChecks',
  'presentMeasures',
  'makeReport',
  'walkJoins',
  // lay out
  'layOut',
  'layOutTiles',
  'layOutComparison',
  'parsePaper',
  'PAPER_NAMES',
  'isOverlap',
  'LEAST_OVERLAP',
  'MOST_OVERLAP',
  'parseSquareMeasured',
  // write
  'mirrorPairs',
  'layOutForProjector',
  'onePage',
  'versionUnder',
  'writeDxf',
  'castIndex',
  'thumbnail',
  'writeSvg',
  'writePdf',
  'patternJson',
  'patternJsonText',
  // all of it
  'makePattern',
  'writePattern',
  'writeComparison',
  'writeForms',
  'FORM_FORMATS',
  'writeExplanation',
  'EXPLANATION_FORMATS',
  'writeViewPage',
  'FORMATS',
]

/** Types that programs name; types vanish when the code runs, so the source is asked. */
const TYPES = [
  'BodySide Failure Finding LengthUnit Place Problem Remedy Result Severity Success',
  'CorrectionReaders JsonForm JsonSchema Performer Reader Readers ReadingOptions Written',
  'Body BodyHalf BodyPoint Tree CompletedBody GivenMeasures Measure MeasureDefinition MeasureKind MeasureName',
  'CapEase Choices Cloth Draft EaseName Fit MeasureRow MockUpAllowances Opening SeamAllowances',
  'Box Cubic Dart EaseRange Join JoinPart Landmark Line Notch Path Pattern Piece Point Seam Side',
  'AllowanceRow CornerMade Correction CorrectionContext CorrectionRecord CorrectionSide Effect FigureChange',
  'FittingRecord Gone JoinChange JoinLengths Moved Noticed OperationResult PatternOperation PatternVersion PiecePoint',
  'PositionMap ReplayOptions Replayed SeamChange SeamMoved SeamPosition SettingDefault ShiftSeamOptions SlipEntry',
  'SlipHead SlipWords',
  'Anchor HingeOptions ReMarkOptions ResolveCapOptions RotateDartOptions SeamPoint SetDartOptions SlideDartOptions',
  'SpreadOptions Station TruedEdge TruedInFitting TruedSeams TrueOptions',
  'SlipMove JoinDifference MovePeak PieceComparison PieceParts SeamMove SeamPlace Half VersionComparison',
  'Advice AdviceCause AdviceEntry AdviceOptions AdvicePlace',
  'CorrectionDefinition StrictSettings SeamLine SeamName ShiftLineRequest ShiftStation',
  'Check CheckContext CheckDefinition Found FoundAs WrittenCorrection MovementRow ReachForward Report ReportMeasure ReportOptions WalkedJoin WalkedSpan',
  'ComparedPiece DrawingOptions DrawnMove Estimate Segment',
  'FillMark LayOutOptions Mark MarkKind Paper PieceDrawing PlacedDrawing Scene SheetInfo StrokeMark TextMark',
  'TileOptions TilePage TileSet SquareMeasured',
  'CastEntry CastIndexOptions DxfOptions PaperPages',
  'JsonPoint LandmarkJson NotchJson PatternJson PatternJsonOptions PdfOptions PieceJson SvgOptions',
  'Chord Direction ExplanationFormat ExplanationJson ExplanationOptions Placing Run SaidNumber SectionJson StepJson',
  'StepLine WrittenExplanation',
  'ComparisonJson ComparisonOptions WrittenComparison',
  'FormFormat FormJson FormMeasure FormOptions FormSheet WrittenForms',
  'ViewJson ViewPageOptions',
  'Format MadePattern MakeOptions WriteOptions WrittenFile WrittenPattern',
  'BeginOptions',
  'RunChecksOptions',
  'NewCorrection OfferedOptions RecordedText SettingKind',
  'TakenChoices',
].flatMap((line) => line.split(' '))

test('the values are these and no others', () => {
  expect(Object.keys(index).sort()).toEqual([...VALUES].sort())
})

test('the types are these and no others', () => {
  const source = ts.createSourceFile(
    'index.ts',
    readFileSync(new URL('../src/index.ts', import.meta.url), 'utf8'),
    ts.ScriptTarget.ES2022,
  )
  const types = source.statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || !statement.exportClause) return []
    if (!ts.isNamedExports(statement.exportClause)) return []
    const all = statement.isTypeOnly
    return statement.exportClause.elements.filter((e) => all || e.isTypeOnly).map((e) => e.name.text)
  })
  expect(types.sort()).toEqual([...TYPES].sort())
})

test('importing it does nothing to be seen and loads zod and yaml alone', () => {
  // Every module that Node is asked for while the built package is imported, by a loader hook.
  const hook = `export async function resolve(name, context, next) {
    const found = await next(name, context)
    process.stderr.write(found.url + '\\n')
    return found
  }`
  const script = `import { register } from 'node:module'
    register('data:text/javascript,' + encodeURIComponent(${JSON.stringify(hook)}))
    const prototypes = [Array, Map, Set, Promise, Object, Function, String, Number].map((one) => one.prototype)
    const seen = () => [globalThis, ...prototypes].flatMap((one) => Reflect.ownKeys(one).map(String))
      .concat(process.eventNames().map(String), process.getActiveResourcesInfo())
    const before = seen()
    const index = await import('scyewright')
    if (!index.writePdf) throw new Error('no writePdf')
    const left = seen()
    for (const name of before) left.splice(left.indexOf(name), 1)
    console.log(left.join())
    await new Promise((done) => setTimeout(done, 100))
  `
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: root,
    encoding: 'utf8',
  })
  expect(status, stderr).toBe(0)
  // zod keeps its settings where several copies of it find them.
  expect(
    stdout
      .trim()
      .split(',')
      .filter((name) => !name.startsWith('__zod_')),
  ).toEqual([])
  expect(stderr).toContain('/dist/index.mjs')
  const loaded = stderr.split('\n').filter((line) => line !== '')
  const packages = loaded.flatMap((url) => /\/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(url)?.[1] ?? [])
  expect([...new Set(packages)].sort()).toEqual(['yaml', 'zod'])
  // What is left are the package's own files; of Node's modules yaml uses its two that are everywhere.
  const others = loaded.filter((url) => !url.includes('/node_modules/') && !url.includes('/dist/'))
  expect(others.filter((url) => !/^(data:|node:(module|process|buffer)$)/.test(url))).toEqual([])
})
