import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Report } from '../../src/checks/report.ts'
import { ADVICE_PLACES } from '../../src/fitting/advice/advice.ts'
import { adviceFor } from '../../src/fitting/advice/advice-for.ts'
import { type MakeOptions, makePattern } from '../../src/pipeline.ts'
import { lamplighter } from '../scye.ts'

const DEMO = readFileSync(lamplighter, 'utf8').trimEnd()
const DRAFT = `${DEMO.slice(0, DEMO.indexOf('fittings:'))}fittings:`
const ENTRIES = adviceFor('').entries
const SNIPPETS = ENTRIES.flatMap(({ id, causes }) =>
  causes.flatMap(({ snippet, costs }, i) =>
    snippet === undefined ? [] : [{ name: `${id}, ${i + 1}`, snippet, costs }],
  ),
)

/** The file with one more fitting, of a mock-up of its own, with the snippet as it is. */
function withSnippet(file: string, snippet: string, options: MakeOptions = {}) {
  const corrections = snippet.replace(/^/gm, '      ')
  const text = `${file}\n  - label: advice\n    mock-up: 2\n    corrections:\n${corrections}\n`
  const made = makePattern(text, 'demo.yaml', options)
  if (!made.ok) throw new Error(made.problems.map((p) => `${p.code}: ${p.actual}; ${p.hint}`).join('\n'))
  const { pattern, versions, report } = made.value
  return { pattern, before: versions[versions.length - 2]?.pattern, report }
}

describe('the entries', () => {
  test('are about thirty to forty-five, with names of their own, for every place', () => {
    expect(ENTRIES.length).toBeGreaterThanOrEqual(30)
    expect(ENTRIES.length).toBeLessThanOrEqual(45)
    expect(new Set(ENTRIES.map(({ id }) => id)).size).toBe(ENTRIES.length)
    for (const { id } of ENTRIES) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/)
    for (const place of ADVICE_PLACES) {
      const { entries } = adviceFor('', { place })
      expect(entries.length, place).toBeGreaterThanOrEqual(3)
      for (const entry of entries) expect(entry.places).toContain(place)
    }
  })

  test('say what to pin, what it costs and what to mind', () => {
    for (const { id, seen, causes, caution } of ENTRIES) {
      expect(seen.length, id).toBeGreaterThan(20)
      expect(caution, id).toMatch(/pin|shears|neck|dizziness/)
      for (const { cause, pin, costs } of causes) {
        for (const text of [cause, pin, costs]) expect(text.length, id).toBeGreaterThan(15)
      }
    }
  })

  test('every amount says its unit, so that it means the same in every file', () => {
    for (const { name, snippet } of SNIPPETS) {
      for (const [, amount] of snippet.matchAll(/^ *(?:- )?(?:by|along cap|intake|ease): (.*)$/gm)) {
        expect(amount, name).toMatch(/^[\d/ ]+ (in|%)$/)
      }
    }
  })
})

describe('every snippet', () => {
  // The same corrections stand under several entries.
  const once = SNIPPETS.filter(({ snippet }, i) => SNIPPETS.findIndex((other) => other.snippet === snippet) === i)

  const reports = new Map<string, Report>()

  test.each(once)('$name is applied to the demo as fitted, and changes it', ({ snippet }) => {
    const { pattern, before } = withSnippet(DEMO, snippet, { checks: [] })
    expect(pattern).not.toEqual(before)
  })

  test.each(SNIPPETS)(
    '$name leaves the demo’s draft sewable, and says so where a cap is to be matched again',
    ({ snippet, costs }) => {
      const report = reports.get(snippet) ?? withSnippet(DRAFT, snippet).report
      reports.set(snippet, report)
      expect(report.findings.filter((f) => f.severity === 'error')).toEqual([])
      const joins = report.findings.filter((f) => f.severity === 'warning').flatMap((f) => f.where.join ?? [])
      if (joins.some((id) => /cap/.test(id))) expect(costs).toMatch(/rematch cap/)
      if (joins.some((id) => /side seam/.test(id))) expect(costs).toMatch(/side notch/)
    },
  )
})

describe('advice for words', () => {
  test.each([
    ['tight upper arm', 'tight-upper-arm'],
    ['binding biceps', 'tight-upper-arm'],
    ['sleeve twists', 'arm-forward-of-sleeve'],
    ['cannot reach forward', 'cannot-reach'],
    ['the bodice rises when the arm is lifted', 'cannot-reach'],
    ['armhole gaping', 'front-armscye-gapes'],
    ['low armhole', 'low-armscye'],
    ['puckered sleeve cap', 'puckers-at-crown'],
    ['sleeve too short', 'sleeve-short-when-bent'],
    ['elbow strains', 'elbow-binds'],
    ['hand won’t pass the wrist', 'tight-wrist'],
    ['neck chokes', 'neck-chokes'],
    ['one shoulder lower', 'uneven-shoulders'],
    ['Square shoulders', 'square-shoulder'],
    ['wrinkles under the arm', 'folds-under-arm'],
    ['lines from bust to side seam', 'lines-from-bust'],
    ['tight across the back', 'back-pulls-reaching'],
    ['sway back', 'sway-back'],
    ['zipper will not close', 'opening-does-not-meet'],
    ['cap-too-tall', 'cap-too-tall'],
  ])('%s: first %s', (words, id) => {
    expect(adviceFor(words).entries[0]?.id).toBe(id)
  })

  test('endings and words of the same meaning count as the same', () => {
    const ids = (words: string) => adviceFor(words).entries.map(({ id }) => id)
    expect(ids('armscye gapes')).toEqual(ids('armholes gaping'))
    expect(ids('elbow strained')).toEqual(ids('elbow strains'))
    expect(ids('bicep')).toEqual(ids('biceps'))
  })

  test('every entry is found by its own name alone, and among the first by what is seen', () => {
    for (const { id, seen } of ENTRIES) {
      expect(adviceFor(id).entries.map((entry) => entry.id)).toEqual([id])
      expect(
        adviceFor(seen)
          .entries.slice(0, 2)
          .map((entry) => entry.id),
      ).toContain(id)
    }
  })

  test('a place narrows it', () => {
    expect(adviceFor('too wide', { place: 'back' }).entries.map(({ id }) => id)).toContain('back-too-wide')
    expect(adviceFor('too wide', { place: 'back' }).entries.map(({ id }) => id)).not.toContain('front-too-wide')
  })

  test('a word that no entry has is named with the nearest; it does not hide the others', () => {
    expect(adviceFor('gusst')).toEqual({ entries: [], unknown: [{ word: 'gusst', nearest: 'gusset' }] })
    const { entries, unknown } = adviceFor('tight upper arm xylophone')
    expect(unknown).toEqual([{ word: 'xylophone' }])
    expect(entries.map(({ id }) => id)).toEqual(adviceFor('tight upper arm').entries.map(({ id }) => id))
  })

  test('words that say nothing find nothing', () => {
    expect(adviceFor('it is the').entries).toEqual([])
  })
})
