import { createSVGWindow } from 'svgdom'
import { expect, test, vi } from 'vitest'

/** The demo's sheet as SVG, by modules of its own. */
async function written(): Promise<string> {
  vi.resetModules()
  const { drafted, INFO } = await import('../sheets/fixture.ts')
  const { layOut } = await import('../../src/sheets/lay-out.ts')
  const { writeSvg } = await import('../../src/writers/svg.ts')
  const scene = layOut(drafted(), { ...INFO, performer: 'É <Lamplighter> & "Ferry Pilot"' })
  return writeSvg(scene, { title: 'É <Lamplighter> & co', description: "Bodice and sleeve; the performer's" })
}

test('svgdom, a whole document of its own, writes the same drawing in the same bytes', async () => {
  const ours = await written()
  let asked = 0
  vi.doMock('../../src/writers/svg-window.ts', () => ({
    svgWindow: () => {
      asked++
      return createSVGWindow()
    },
  }))
  expect(await written()).toBe(ours)
  expect(asked).toBe(1)
})
