// Drafts a bodice and its sleeve from a few measures, fits the sleeve once, checks it and draws it at true scale.
// Run it from the project's folder: npx tsx examples/draft-a-sleeve.ts > sleeve.svg
import {
  completeBody,
  draftPattern,
  type FittingRecord,
  layOut,
  MOCK_UP_ALLOWANCES,
  presentMeasures,
  type Result,
  replay,
  runChecks,
  STANDARD_CHOICES,
  slipText,
  walkJoins,
  writeSvg,
} from '../src/index.ts'

/** Lengths are mm inside; what is not measured is estimated, and says so. */
const MEASURES = {
  'bust girth': 900,
  'waist girth': 720,
  'back waist length': 405,
  'upper arm girth': 290,
  'outer arm length': 590,
}

/** What was seen and pinned on the first mock-up. */
const FITTING: FittingRecord = {
  label: 'first fitting',
  mockUp: 1,
  where: {},
  corrections: [
    { do: 'let out', side: 'both', seen: 'tight over the upper arm', settings: { seam: 'cap', by: 6 }, where: {} },
  ],
}

/** Draft, fit, check and draw: the slip and the walk in words, the sleeve as SVG. */
export async function draftASleeve() {
  const { body } = need(completeBody(MEASURES))
  const draft = need(draftPattern(body, { ...STANDARD_CHOICES, fit: 'standing' }))
  const fitted = need(replay(draft.pattern, [FITTING], { standard: MOCK_UP_ALLOWANCES, byMockUp: {} }))
  const { pattern } = fitted
  const measures = presentMeasures(draft.measures, pattern)
  const findings = runChecks({ pattern, measures, units: 'mm' })
  const info = { performer: 'Ferry Pilot', version: 'first fitting', units: 'mm' } as const
  const description = 'A fitted sleeve at true scale'
  const svg = await writeSvg(layOut(pattern, { ...info, pieces: ['sleeve'] }), { title: 'Ferry Pilot', description })
  return { slip: slipText(fitted.slip, info), walk: walkJoins(pattern), findings, svg }
}

/** A result's value; its problems say what to change. */
function need<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new Error(result.problems.map(({ actual, hint }) => `${actual}: ${hint}`).join('\n'))
}

if (process.argv[1]?.endsWith('draft-a-sleeve.ts')) console.log((await draftASleeve()).svg)
