import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { type MadePattern, makePattern, seamLength, writeViewPage } from '../../src/index.ts'
import { parsePaths } from '../../src/writers/view-page/browser/parse-path.ts'

const example = (name: string) => readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8')
const date = '2026-11-30'

function made(text: string): MadePattern {
  const result = makePattern(text, 'a.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

const lamplighter = made(example('lamplighter'))
const page = writeViewPage(lamplighter, { date })

test('is the same for the same pattern and date', () => {
  expect(writeViewPage(made(example('lamplighter')), { date })).toBe(page)
})

test('asks nothing of a network and may not', () => {
  expect(page).toContain("default-src 'none'")
  expect(page).not.toMatch(/\b(?:https?:|\/\/[a-z])[^"' ]*/)
  expect(page).not.toMatch(/<(?:link|img|script|iframe)[^>]* (?:src|href)="(?!data:|#)/)
})

test('words of the file stay words', () => {
  const name = '</script><script>alert(1)</script> & "é" <b>'
  const text = example('lamplighter')
    .replace('performer: Lamplighter ', `performer: '${name}' `)
    .replaceAll('first fitting', `1 ${name}`)
  const hostile = writeViewPage(made(text.replaceAll(`label: 1 ${name}`, `label: '1 ${name}'`)), { date })
  expect(hostile).not.toContain('<script>alert')
  expect(hostile).not.toContain('<b>é')
  expect(hostile.match(/<\/script>/g)).toHaveLength(2)
  expect(hostile).toContain('&lt;/script&gt;&lt;script&gt;alert(1)')
})

test('every seam of every version is on it, as long as it is on the pattern', () => {
  const drawn = [...page.matchAll(/<path class="seam"[^>]* data-piece="([^"]+)" data-seam="([^"]+)" d="([^"]+)"/g)]
  const seams = lamplighter.versions.flatMap(({ pattern }) =>
    pattern.pieces.flatMap((piece) => piece.seams.map((seam) => ({ piece: piece.id, seam }))),
  )
  expect(drawn).toHaveLength(seams.length)
  for (const [k, { piece, seam }] of seams.entries()) {
    expect([drawn[k]?.[1], drawn[k]?.[2]]).toEqual([piece, seam.id])
    const read = seamLength({ ...seam, parts: parsePaths(drawn[k]?.[3] ?? '') })
    expect(read).toBeCloseTo(seamLength(seam), 4)
  }
})

test('a piece that a fitting took apart is apart in every version, and its findings lead to it', () => {
  const text = writeViewPage(made(example('ferry-pilot')), { date })
  for (const id of ['sleeve left', 'sleeve right'])
    expect(text.match(new RegExp(`data-piece="${id}" data-seam="front cap"`, 'g'))).toHaveLength(3)
  expect(text).not.toContain('data-piece="sleeve" data-seam')
  expect(text).toContain('class="finding" data-piece="sleeve left"')
})

test('a pattern without fittings has one version and no slider', () => {
  const text = writeViewPage(made(example('test-sleeve')), { date })
  expect(text).not.toContain('type="range"')
  expect(text).toContain('No fitting yet.')
})
