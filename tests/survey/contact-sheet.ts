/**
 * Twenty bodies of the survey, small to large by bust, on one sheet to look at:
 *
 *     npx tsx tests/survey/contact-sheet.ts OUT.svg
 */
import { writeFileSync } from 'node:fs'
import { MEASURES } from '../../src/body/measure.ts'
import { outlineOf } from '../../src/pattern/outline.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { pathText } from '../../src/writers/path-text.ts'
import { type SurveyBody, surveyBodies } from './bodies.ts'
import { performerFile, tryFile } from './try-body.ts'

const COUNT = 20
const COLUMNS = 5
const CELL = { width: 1050, height: 900 }

const bodies = surveyBodies().sort((a, b) => bust(a) - bust(b))
const cells: string[] = []
for (let k = 0; k < COUNT; k++) {
  const body = bodies[Math.round((k * (bodies.length - 1)) / (COUNT - 1))] as SurveyBody
  const outcome = tryFile(performerFile(body.given), { thorough: false })
  const x = (k % COLUMNS) * CELL.width
  const y = Math.floor(k / COLUMNS) * CELL.height
  const title = `${body.id}, ${Object.keys(MEASURES)[4]} ${bust(body)}`
  cells.push(
    `<g transform="translate(${x} ${y})"><text x="40" y="60" font-size="40" font-family="sans-serif">${title}</text>` +
      (outcome.kind === 'drafted'
        ? outcome.draft.pattern.pieces.map((piece, n) => drawing(piece, n)).join('')
        : `<text x="40" y="140" font-size="36" font-family="sans-serif">${outcome.problems.map((p) => p.code).join(', ')}</text>`) +
      '</g>',
  )
}
const width = COLUMNS * CELL.width
const height = (COUNT / COLUMNS) * CELL.height
writeFileSync(
  process.argv[2] ?? 'contact-sheet.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width / 5}mm" height="${height / 5}mm" viewBox="0 0 ${width} ${height}"><rect width="${width}" height="${height}" fill="white"/>${cells.join('')}</svg>\n`,
)

function bust(body: SurveyBody): number {
  return body.given['bust girth'] as number
}

function drawing(piece: Piece, n: number): string {
  const at = [`20 660`, `350 660`, `850 320`][n] as string
  const darts = piece.darts.map(
    ({ mouth: [a, b], point }) => `M ${a.x} ${a.y} L ${point.x} ${point.y} L ${b.x} ${b.y}`,
  )
  const stitching = pathText(outlineOf(piece), { decimals: 2, closed: true })
  return `<g transform="translate(${at}) scale(1 -1)" fill="none" stroke="black" stroke-width="2.5"><path d="${stitching}"/><path d="${darts.join(' ')}"/></g>`
}
