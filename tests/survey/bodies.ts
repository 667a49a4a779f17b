import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { GivenMeasures } from '../../src/body/given.ts'

/** ANSUR II (2012), report NATICK/TR-15/007, public release; read beside the project, never copied into it. */
const FILE = fileURLToPath(new URL('../../../shared/data/ansur2.csv', import.meta.url))

export const SURVEY_IS_HERE = existsSync(FILE)

export interface SurveyBody {
  readonly id: string
  readonly given: GivenMeasures
}

const SLOPE = { least: (12 * Math.PI) / 180, most: (32 * Math.PI) / 180 }

/**
 * The survey's subjects as a draper would have measured them: scye depth = cervicale height − axilla height + 40 mm,
 * upper arm = 0.95 × the flexed one, slope from the heights over the shoulder length, held to 12–32°; mm.
 */
export function surveyBodies(): SurveyBody[] {
  const [head, ...rows] = readFileSync(FILE, 'utf8').trim().split('\n')
  const columns = (head as string).split(',')
  return rows.map((row) => {
    const cells = row.split(',')
    const at = (column: string) => Number(cells[columns.indexOf(column)])
    const slope = Math.atan((at('cervicaleheight') - at('acromialheight')) / at('shoulderlength'))
    return {
      id: cells[0] as string,
      given: {
        'neck base girth': at('neckcircumferencebase'),
        'shoulder length': at('shoulderlength'),
        'shoulder slope': Math.min(Math.max(slope, SLOPE.least), SLOPE.most),
        'bust girth': at('chestcircumference'),
        'waist girth': at('waistcircumference'),
        'back waist length': at('waistbacklength'),
        'scye depth': at('cervicaleheight') - at('axillaheight') + 40,
        'back width': at('interscyei'),
        'upper arm girth': 0.95 * at('bicepscircumferenceflexed'),
        'upper arm girth flexed': at('bicepscircumferenceflexed'),
        'outer arm length': at('sleeveoutseam'),
        'shoulder to elbow': at('acromionradialelength'),
        'wrist girth': at('wristcircumference'),
        'hand girth': at('handcircumference'),
      },
    }
  })
}

/** About `count` of them, spread over the survey by a seeded shuffle (mulberry32), so that a failure comes again. */
export function surveySample(count: number, seed: number): SurveyBody[] {
  const bodies = surveyBodies()
  let state = seed
  const random = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return Array.from({ length: count }, () => bodies[Math.floor(random() * bodies.length)] as SurveyBody)
}
