// What another program may say of the package and what it may not: compiled, never run. Every line after an expected
// error must be one, and all else none. `package.test.ts` compiles it against the packed types.
import * as z from 'zod'
import {
  CHECKS,
  type Check,
  CORRECTIONS,
  type Correction,
  completeBody,
  defineCheck,
  defineCorrection,
  draftPattern,
  makePattern,
  type Pattern,
  runChecks,
  seamLines,
  shiftLine,
  success,
} from '../../src/index.ts'

const words = { name: 'flatten wrist', does: 'makes the wrist straight', answers: ['the wrist dips'] }
const said = { what: 'flatten the wrist', where: 'from seam to seam' }

export const good: Correction = defineCorrection({
  ...words,
  settings: (read) => z.strictObject({ by: read.positiveLength(), 'along wrist': read.length().optional() }),
  defaults: [{ setting: 'along wrist', value: 'the whole of it', source: 'common practice' }],
  compile: ({ worn, side }, { by }) =>
    success(
      shiftLine({
        seam: 'wrist',
        side,
        stations: seamLines(worn, 'wrist', side).map(({ piece }) => ({ piece, seam: 'wrist', along: by, amount: -by })),
        anchors: [],
      }),
    ),
  word: ({ by }, say) => ({ ...said, what: `${said.what} by ${say(by)}` }),
})

export const goodCheck: Check = defineCheck({
  name: 'good',
  looksAt: 'nothing',
  codes: ['too-good'],
  run: () => [
    { code: 'too-good', severity: 'note', where: {}, actual: '', expected: '', hint: '', tries: [{ do: 'let out' }] },
  ],
})

makePattern('', 'none.yaml', { corrections: [...CORRECTIONS, good], checks: [...CHECKS, goodCheck] })

defineCorrection({
  ...words,
  settings: (read) => z.strictObject({ by: read.positiveLength() }),
  defaults: [],
  // @ts-expect-error there is no setting `amount`
  compile: (_, { amount }) => success(amount ? [] : []),
  word: () => said,
})

defineCorrection({
  ...words,
  settings: (read) => z.strictObject({ by: read.positiveLength() }),
  defaults: [],
  compile: () => success([]),
  // @ts-expect-error lengths are numbers of mm, and `say` makes words of them
  word: ({ by }, say) => ({ ...said, what: say(`${by} mm`) }),
})

defineCorrection({
  ...words,
  settings: (read) => z.strictObject({ by: read.positiveLength() }),
  // @ts-expect-error a default of a setting that is not there
  defaults: [{ setting: 'taper to', value: 'the notch', source: 'common practice' }],
  compile: () => success([]),
  word: () => said,
})

defineCorrection({
  ...words,
  // @ts-expect-error an object that takes unknown keys would hide misspelt ones
  settings: (read) => z.looseObject({ by: read.positiveLength() }),
  defaults: [],
  compile: () => success([]),
  word: () => said,
})

defineCorrection({
  ...words,
  // @ts-expect-error every correction has a side already
  settings: (read) => z.strictObject({ side: read.text() }),
  defaults: [],
  compile: () => success([]),
  word: () => said,
})

defineCorrection({
  ...words,
  settings: () => z.strictObject({}),
  defaults: [],
  // @ts-expect-error a result of operations, not the operations themselves
  compile: () => [],
  word: () => said,
})

// @ts-expect-error settings that no schema has read
export const unread: Correction = { ...good, compile: (_, settings: { by: number }) => success(settings.by ? [] : []) }

// @ts-expect-error a stitching line that no draper knows
shiftLine({ seam: 'wirst', side: 'both', stations: [], anchors: [] })

// @ts-expect-error a side that no body has
shiftLine({ seam: 'wrist', side: 'front', stations: [], anchors: [] })

defineCheck({
  name: 'fatal',
  looksAt: 'nothing',
  codes: ['fatal'],
  // @ts-expect-error error, warning or note
  run: () => [{ code: 'fatal', severity: 'fatal', where: {}, actual: '', expected: '', hint: '' }],
})

defineCheck({
  name: 'unsaid',
  looksAt: 'nothing',
  codes: ['said'],
  // @ts-expect-error a code that is not among its codes
  run: () => [{ code: 'unsaid', severity: 'note', where: {}, actual: '', expected: '', hint: '' }],
})

defineCheck({
  name: 'no hint',
  looksAt: 'nothing',
  codes: ['no-hint'],
  // @ts-expect-error every finding has a hint
  run: () => [{ code: 'no-hint', severity: 'note', where: {}, actual: '', expected: '' }],
})

// @ts-expect-error a measure that there is not
completeBody({ 'bust grith': 900 })

// @ts-expect-error a result may be a failure
draftPattern(completeBody({}).value)

export function readonlyData(pattern: Pattern): void {
  // @ts-expect-error a pattern is never edited
  pattern.pieces = []
  // @ts-expect-error lengths are told in in, cm or mm
  runChecks({ pattern, measures: [], units: 'ft' })
}
