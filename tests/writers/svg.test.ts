import { describe, expect, test } from 'vitest'
import { layOut } from '../../src/sheets/lay-out.ts'
import { writeSvg } from '../../src/writers/svg.ts'
import { drafted, INFO } from '../sheets/fixture.ts'

const scene = layOut(drafted(), { ...INFO, performer: 'É <Lamplighter> & "Ferry Pilot"' })
const options = { title: 'É <Lamplighter> & co', description: 'Bodice and sleeve' }
const svg = await writeSvg(scene, options)

describe('svg', () => {
  test('is as large as its viewBox, in mm, without px', () => {
    const root = /<svg [^>]*>/.exec(svg)?.[0] ?? ''
    const width = Number(/ width="([\d.]+)mm"/.exec(root)?.[1])
    const height = Number(/ height="([\d.]+)mm"/.exec(root)?.[1])
    expect(root).toContain(`viewBox="0 0 ${width} ${height}"`)
    expect(width).toBe(scene.width)
    expect(height).toBe(scene.height)
    expect(root).toContain('role="img"')
    expect(svg).not.toMatch(/\dpx/)
    expect(svg).not.toMatch(/svgjs|data-/)
  })

  test('names the document and escapes words', () => {
    expect(svg).toContain('É &lt;Lamplighter&gt; &amp; co</title>')
    expect(svg).not.toContain('<Lamplighter>')
  })

  test('has one group for each piece and each kind of line, ids unique', () => {
    const ids = Array.from(svg.matchAll(/ id="([^"]*)"/g), (m) => m[1] ?? '')
    expect(new Set(ids).size).toBe(ids.length)
    for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9-]*$/)
    for (const piece of ['bodice-back', 'bodice-front', 'sleeve']) {
      expect(svg).toMatch(new RegExp(`<g id="${piece}" inkscape:groupmode="layer" inkscape:label="[^"]+">`))
      for (const kind of [
        'cutting-lines',
        'stitching-lines',
        'darts',
        'notches',
        'grain-lines',
        'balance-lines',
        'labels',
      ]) {
        expect(ids).toContain(`${piece}-${kind}`)
      }
    }
    expect(ids).toContain('sleeve-stitching-line-front-cap')
    expect(ids).toContain('bodice-front-fold-line-center-front')
    const referred = /aria-labelledby="([^"]*)"/.exec(svg)?.[1]?.split(' ') ?? []
    for (const id of referred) expect(ids).toContain(id)
  })

  test('tells lines apart by dash and weight alone', () => {
    const looks = new Map<string, string>()
    for (const [, id = '', rest = ''] of svg.matchAll(
      /<g id="bodice-front-(cutting-lines|stitching-lines|fold-lines|darts|balance-lines)"([^>]*)>/g,
    )) {
      looks.set(id, `${/stroke-width="([^"]*)"/.exec(rest)?.[1]} ${/stroke-dasharray="([^"]*)"/.exec(rest)?.[1]}`)
    }
    expect(looks.size).toBe(5)
    expect(new Set(looks.values()).size).toBe(5)
    expect(svg).not.toMatch(/stroke-width="0"/)
    const colors = new Set(Array.from(svg.matchAll(/(?:stroke|fill)="(#[^"]*)"/g), (m) => m[1]))
    expect(Array.from(colors)).toEqual(['#000000'])
  })

  test('has measured squares of 100 mm and 4 in', () => {
    const box = (id: string) => {
      const d = new RegExp(`<path d="([^"]*)"[^>]* id="${id}"`).exec(svg)?.[1] ?? ''
      const n = (d.match(/-?[\d.]+/g) ?? []).map(Number)
      const xs = n.filter((_, k) => k % 2 === 0)
      const ys = n.filter((_, k) => k % 2 === 1)
      return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
    }
    for (const side of box('foot-measured-square-100-mm-square')) expect(side).toBeCloseTo(100, 6)
    for (const side of box('foot-measured-square-4-in-square')) expect(side).toBeCloseTo(101.6, 6)
  })

  test('has the same bytes twice, no exponents', async () => {
    expect(await writeSvg(scene, options)).toBe(svg)
    expect(svg.replace(/#[0-9a-f]{6}/g, '')).not.toMatch(/\d[eE][+-]?\d/)
  })
})
