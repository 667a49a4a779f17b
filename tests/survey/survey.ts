/**
 * Drafts every body of the survey, checks each with the product's checks and the independent reader, applies every
 * remedy of every problem, and prints statistics with the ten bodies at each end:
 *
 *     npm run survey
 */
import type { Piece } from '../../src/pattern/piece.ts'
import { seamEnd, seamLength, seamOf, seamStart } from '../../src/pattern/seam.ts'
import { distance } from '../../src/geometry/point.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { SURVEY_IS_HERE, surveyBodies } from './bodies.ts'
import { performerFile, tryFile } from './try-body.ts'

if (!SURVEY_IS_HERE) {
  console.log('survey skipped: ../shared/data/ansur2.csv is not here')
  process.exit(0)
}

const figures = new Map<string, { id: string; value: number }[]>()
const codes = new Map<string, number>()
let drafted = 0
let faulty = 0
let thrown = 0
let withoutRemedy = 0
let failedRemedies = 0
let remedies = 0
const bodies = surveyBodies()
const started = performance.now()

for (const { id, given } of bodies) {
  try {
    const outcome = tryFile(performerFile(given))
    if (outcome.kind === 'drafted') {
      drafted++
      if (outcome.faults.length > 0) {
        faulty++
        console.log(`${id}: ${outcome.faults.join('; ')}`)
      }
      collect(id, outcome.draft)
      continue
    }
    for (const problem of outcome.problems) {
      codes.set(problem.code, (codes.get(problem.code) ?? 0) + 1)
      if (!problem.remedies?.length) {
        withoutRemedy++
        console.log(`${id}: no remedy for ${problem.code}: ${problem.actual}`)
      }
      for (const remedy of problem.remedies ?? []) {
        remedies++
        const again = tryFile(performerFile(given, remedy.set))
        if (again.kind === 'drafted' && again.faults.length === 0) continue
        failedRemedies++
        console.log(`${id}: remedy fails: ${remedy.say}`)
      }
    }
  } catch (error) {
    thrown++
    console.log(`${id}: ${error instanceof Error ? error.message : error}`)
  }
}

const seconds = (performance.now() - started) / 1000
console.log(`${bodies.length} bodies in ${seconds.toFixed(1)} s`)
console.log(`${drafted} drafted directly (${((100 * drafted) / bodies.length).toFixed(2)} %), ${faulty} of them with faults`)
console.log(`${bodies.length - drafted - thrown} with problems (${[...codes].map(([code, n]) => `${code} ${n}`).join(', ')})`)
console.log(`${remedies} remedies applied, ${failedRemedies} failed; ${withoutRemedy} problems without one; ${thrown} exceptions`)
for (const [name, list] of figures) {
  list.sort((a, b) => a.value - b.value)
  const at = (share: number) => (list[Math.min(list.length - 1, Math.floor(share * list.length))]?.value ?? 0).toFixed(3)
  console.log(`${name}: min ${at(0)}, 1 % ${at(0.01)}, median ${at(0.5)}, 99 % ${at(0.99)}, max ${at(1)}`)
  console.log(`  least: ${list.slice(0, 10).map((x) => `${x.id} ${x.value.toFixed(3)}`).join(', ')}`)
  console.log(`  most: ${list.slice(-10).map((x) => `${x.id} ${x.value.toFixed(3)}`).join(', ')}`)
}
process.exitCode = faulty + thrown + withoutRemedy + failedRemedies > 0 || drafted < 0.97 * bodies.length ? 1 : 0

function collect(id: string, { pattern }: Draft): void {
  const [back, front, sleeve] = pattern.pieces as [Piece, Piece, Piece]
  const armscye = seamLength(seamOf(back, 'armscye')) + seamLength(seamOf(front, 'armscye'))
  const cap = seamOf(sleeve, 'front cap')
  const backUnderarm = seamEnd(seamOf(sleeve, 'back cap')).x
  add('cap height ratio', id, seamEnd(cap).y / armscye)
  add('grain shift, mm', id, -(seamStart(cap).x + backUnderarm) / 2)
  add('armscye width, mm', id, armscyeWidth(back) + armscyeWidth(front))
  add('elbow intake, mm', id, sleeve.darts.reduce((sum, dart) => sum + distance(...dart.mouth), 0))
}

/** From the width line to the side seam at the underarm. */
function armscyeWidth(piece: Piece): number {
  const line = piece.lines.find((l) => l.id.endsWith('width line'))
  return seamStart(seamOf(piece, 'armscye')).x - (line?.path[0]?.p0.x ?? Number.NaN)
}

function add(name: string, id: string, value: number): void {
  const list = figures.get(name) ?? []
  list.push({ id, value })
  figures.set(name, list)
}
