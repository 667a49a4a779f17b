/**
 * Twenty bodies of the survey, small to large by bust, on one sheet to look at, all at one scale: stitching and
 * cutting lines, darts, notches, grain and balance lines:
 *
 *     npx tsx tests/survey/contact-sheet.ts OUT.svg
 */
import { writeFileSync } from 'node:fs'
import { bounds, joinBoxes } from '../../src/geometry/bounds.ts'
import { cutLine } from '../../src/pattern/cut-line.ts'
import { outlineOf } from '../../src/pattern/outline.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { notchPoints } from '../../src/pattern/seam.ts'
import { pathText } from '../../src/writers/path-text.ts'
import { SURVEY_IS_HERE, type SurveyBody, surveyBodies } from './bodies.ts'
import { performerFile, tryFile } from './try-body.ts'

const COUNT = 20
const COLUMNS = 4
/** One body, in mm of pattern. */
const CELL = { width: 1560, height: 840, margin: 40, title: 90 }

if (!SURVEY_IS_HERE) throw new Error('../shared/data/ansur2.csv is not here')
const bodies = surveyBodies().sort((a, b) => measure(a, 'bust girth') - measure(b, 'bust girth'))
const chosen = Array.from({ length: COUNT }, (_, k) => bodies[Math.round((k * (bodies.length - 1)) / (COUNT - 1))])
const cells = chosen.map((body, k) => cell(body as SurveyBody, k))
const width = COLUMNS * CELL.width
const height = Math.ceil(COUNT / COLUMNS) * CELL.height
writeFileSync(
  process.argv[2] ?? 'contact-sheet.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width / 5}mm" height="${height / 5}mm" viewBox="0 0 ${width} ${height}">
<rect width="${width}" height="${height}" fill="white"/>
<g fill="none" stroke="black" stroke-width="2">
${cells.join('\n')}
</g>
</svg>
`,
)

function cell(body: SurveyBody, k: number): string {
  const [x, y] = [(k % COLUMNS) * CELL.width, Math.floor(k / COLUMNS) * CELL.height]
  const girths = (['bust girth', 'waist girth', 'upper arm girth'] as const).map((name) =>
    measure(body, name).toFixed(0),
  )
  const outcome = tryFile(performerFile(body.given))
  const drawn = outcome.kind === 'drafted' ? drawings(outcome.draft.pattern.pieces) : ''
  const wrong = outcome.kind === 'drafted' ? outcome.faults : outcome.problems.map((p) => p.code)
  return `<g transform="translate(${x} ${y})">
<rect width="${CELL.width}" height="${CELL.height}" stroke="silver"/>
<text x="${CELL.margin}" y="60" font-size="38" font-family="sans-serif" fill="black" stroke="none">${body.id}: bust ${girths[0]}, waist ${girths[1]}, upper arm ${girths[2]} mm ${wrong.join('; ')}</text>
${drawn}</g>`
}

/** Side by side: the front with its center to the left, the back with its center to the right, the sleeve. */
function drawings(pieces: readonly Piece[]): string {
  let left = CELL.margin
  return [...pieces]
    .sort((a, b) => order(a) - order(b))
    .map((piece) => {
      const box = joinBoxes(bounds(cutLine(piece)), bounds(outlineOf(piece)))
      const at = `translate(${left - box.left} ${CELL.title + box.top}) scale(1 -1)`
      left += box.right - box.left + CELL.margin
      return `<g transform="${at}">${drawing(piece)}</g>`
    })
    .join('\n')
}

function order({ id }: Piece): number {
  return ['bodice back', 'bodice front', 'sleeve'].indexOf(id)
}

function drawing(piece: Piece): string {
  const closed = { decimals: 2, closed: true }
  const darts = piece.darts.map(({ mouth: [a, b], point }) => `M${a.x} ${a.y}L${point.x} ${point.y}L${b.x} ${b.y}`)
  const lines = piece.lines.map(({ path }) => pathText(path, { decimals: 2 }))
  const notches = piece.notches
    .flatMap((notch) => notchPoints(piece, notch))
    .map(({ x, y }) => `<circle cx="${x}" cy="${y}" r="5" fill="black" stroke="none"/>`)
  return [
    `<path d="${pathText(cutLine(piece), closed)}" stroke="gray"/>`,
    `<path d="${pathText(outlineOf(piece), closed)}" stroke-width="3"/>`,
    `<path d="${darts.join('')}" stroke-width="3"/>`,
    `<path d="${lines.join('')}" stroke="steelblue" stroke-dasharray="12 6"/>`,
    ...notches,
  ].join('')
}

function measure(body: SurveyBody, name: 'bust girth' | 'waist girth' | 'upper arm girth'): number {
  return body.given[name] as number
}
