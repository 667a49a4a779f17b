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
  'success',
  'failure',
  // read
  'readPerformer',
  'beginPerformer',
  'readTakenChoices',
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
  'FORMATS',
]

/** Types that programs name; types vanish when the code runs, so the source is asked. */
const TYPES = [
  'BodySide Failure Finding LengthUnit Place Problem Remedy Result Severity Success',
  'CorrectionReaders Performer Readers',
  'Body BodyHalf CompletedBody GivenMeasures Measure MeasureDefinition MeasureKind MeasureName',
  'CapEase Choices Cloth Draft EaseName Fit MeasureRow MockUpAllowances Opening SeamAllowances',
  'Cubic Dart EaseRange Join JoinPart Landmark Line Notch Path Pattern Piece Point Seam Side',
  'AllowanceRow CornerMade Correction CorrectionContext CorrectionRecord CorrectionSide Effect FigureChange',
  'FittingRecord Gone JoinChange JoinLengths Moved Noticed OperationResult PatternOperation PatternVersion PiecePoint',
  'PositionMap ReplayOptions Replayed SeamChange SeamMoved SeamPosition SettingDefault ShiftSeamOptions SlipEntry',
  'SlipHead SlipWords',
  'Anchor HingeOptions ReMarkOptions ResolveCapOptions RotateDartOptions SeamPoint SetDartOptions SlideDartOptions',
  'SpreadOptions Station TruedEdge TruedInFitting TruedSeams TrueOptions',
  'SlipMove JoinDifference MovePeak PieceComparison PieceParts SeamMove SeamPlace VersionComparison',
  'Advice AdviceCause AdviceEntry AdviceOptions AdvicePlace',
  'Check CheckContext Found WrittenCorrection MovementRow ReachForward Report ReportMeasure ReportOptions WalkedJoin WalkedSpan',
  'ComparedPiece DrawnMove',
  'FillMark LayOutOptions Mark MarkKind Paper PieceDrawing PlacedDrawing Scene SheetInfo StrokeMark TextMark',
  'TileOptions TilePage TileSet SquareMeasured',
  'CastEntry CastIndexOptions DxfOptions PaperPages',
  'JsonPoint LandmarkJson NotchJson PatternJson PatternJsonOptions PdfOptions PieceJson SvgOptions',
  'ComparisonJson ComparisonOptions WrittenComparison',
  'Format MadePattern MakeOptions WriteOptions WrittenFile WrittenPattern',
  'BeginOptions',
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

test('importing it says nothing and loads neither pdfkit nor svgdom nor svg.js', () => {
  // Every module that Node is asked for while the built package is imported, by a loader hook.
  const hook = `export async function resolve(name, context, next) {
    const found = await next(name, context)
    process.stderr.write(found.url + '\\n')
    return found
  }`
  const script = `import { register } from 'node:module'
    register('data:text/javascript,' + encodeURIComponent(${JSON.stringify(hook)}))
    const index = await import('scyewright')
    if (!index.writePdf) throw new Error('no writePdf')
    await new Promise((done) => setTimeout(done, 100))
  `
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: root,
    encoding: 'utf8',
  })
  expect(status, stderr).toBe(0)
  expect(stdout).toBe('')
  expect(stderr).toContain('/dist/index.mjs')
  expect(stderr).toContain('/node_modules/zod/')
  expect(stderr).not.toMatch(/node_modules\/(pdfkit|svgdom|@svgdotjs)/)
})
