import { beforeAll, describe, expect, it } from 'vitest'
import { type MadePattern, makePattern } from '../../src/pipeline.ts'
import { type WrittenFile, writePattern } from '../../src/write-pattern.ts'

const FIVE = `performer: Lamplighter
units: mm
body:
  bust girth: 914
  waist girth: 711
  back waist length: 419
  upper arm girth: 279
  outer arm length: 584
`

function made(text: string): MadePattern {
  const result = makePattern(text, 'lamplighter.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

async function filesOf(text: string): Promise<ReadonlyMap<string, WrittenFile['content']>> {
  const options = { formats: ['svg', 'json'], date: '2026-10-02T00:00:00Z', font: () => new Uint8Array() } as const
  const written = await writePattern(made(text), options)
  if (!written.ok) throw new Error(JSON.stringify(written.problems))
  return new Map(written.value.files.map(({ name, content }) => [name, content]))
}

/** Text of an SVG's piece, lines of a label joined. */
function wordsOf(svg: string, piece: string): string {
  const start = svg.indexOf(`<g id="${piece.replace(' ', '-')}"`)
  const next = svg.indexOf('<title>', svg.indexOf('<title>', start) + 1)
  return [...svg.slice(start, next < 0 ? undefined : svg.length).matchAll(/<text[^>]*>([^<]*)/g)]
    .map(([, text]) => text)
    .join(' ')
}

describe('what nobody measured is said on every output, with its standard error', () => {
  let files: ReadonlyMap<string, WrittenFile['content']>
  beforeAll(async () => {
    files = await filesOf(FIVE)
  })

  it('on the pieces it shapes', () => {
    const svg = String(files.get('pattern.svg'))
    expect(wordsOf(svg, 'sleeve')).toMatch(/estimated: elbow girth [\d.]+ mm ± [\d.]+ mm, wrist girth/)
    expect(svg.match(/estimated: /g)).toHaveLength(3)
  })

  it('in the slip, the report and the pattern', () => {
    expect(String(files.get('slip.txt')).replace(/\s+/g, ' ')).toMatch(
      /Estimated, not measured: .*back width [\d.]+ mm ± [\d.]+ mm.*wrist girth/,
    )
    const report = JSON.parse(String(files.get('report.json')))
    const row = report.measures.find((m: { name: string }) => m.name === 'wrist girth')
    expect(row).toMatchObject({ estimated: true, standardError: expect.any(Number) })
    const { estimates } = JSON.parse(String(files.get('pattern.json')))
    const width = Math.round(row.standardError)
    expect(estimates).toContainEqual({
      measure: 'wrist girth',
      side: 'both',
      words: expect.stringContaining(`± ${width} mm`),
    })
  })

  it('and a measure that was taken is no estimate anywhere', async () => {
    const taken = await filesOf(`${FIVE}  wrist girth: 160\n`)
    for (const name of ['pattern.svg', 'slip.txt', 'pattern.json'])
      expect(String(taken.get(name)), name).not.toMatch(/wrist girth\s[\d.]+ mm/)
  })
})
