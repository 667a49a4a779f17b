import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { capEase } from '../../src/checks/cap-ease.ts'
import { runChecks } from '../../src/checks/checks.ts'
import { makePattern } from '../../src/pipeline.ts'
import { lamplighter } from '../scye.ts'
import { contextOf, DRAFT, SPLIT } from './fixture.ts'

const NO_FITTING = readFileSync(lamplighter, 'utf8').replace(/^fittings:[\s\S]*/m, '')

/** The demo before any fitting with this much cap ease in this cloth: total ease, armscye (mm) and what is said of it. */
function demo(ease: string, cloth: string) {
  const text = NO_FITTING.replace('upper arm: 2', `upper arm: 2, cap: ${ease}`).replace(
    'cloth: muslin',
    `cloth: ${cloth}`,
  )
  const made = makePattern(text, 'demo.yaml')
  if (!made.ok) throw new Error(made.problems.map((p) => p.actual).join('; '))
  const { report } = made.value
  const caps = report.joins.filter(({ id }) => /cap/.test(id))
  return {
    share: caps.reduce((sum, { ease: e }) => sum + e, 0) / caps.reduce((sum, { b }) => sum + b, 0),
    said: report.findings.filter(({ code }) => /ease-stitching|cap-too-full/.test(code)),
  }
}

describe('cap ease in its cloth', () => {
  // What is eased in without gathers (REFERENCES.md, section 6, from memory): muslin 9 %, soft wool 12 %, firm 5 %, leather 2 %.
  test.each([
    ['6 %', 'muslin', []],
    ['7 %', 'muslin', []],
    ['8 %', 'muslin', ['ease-stitching']],
    ['8 %', 'soft wool', []],
    ['11 %', 'soft wool', ['ease-stitching']],
    ['3 %', 'firm', []],
    ['4.5 %', 'firm', ['ease-stitching']],
    ['1 %', 'leather', []],
    ['10 %', 'muslin', ['cap-too-full', 'cap-too-full']],
  ])('%s in %s: %j', (ease, cloth, codes) => {
    const { share, said } = demo(ease, cloth)
    expect(share).toBeCloseTo(Number.parseFloat(ease) / 100, 3)
    expect(said.map(({ code }) => code)).toEqual(codes)
    for (const finding of said.filter(({ code }) => code === 'ease-stitching')) {
      expect(finding).toMatchObject({ severity: 'note', where: { piece: 'sleeve', seam: 'cap' } })
      expect(finding.actual).toContain(`${cloth} takes`)
      expect(finding.hint).toContain('1/8 in (3 mm) and 1/4 in (6 mm) outside the stitching line')
    }
  })

  test('is said of each sleeve where the sides are apart', () => {
    const near = (pattern: typeof SPLIT) => ({
      ...contextOf({
        ...pattern,
        joins: pattern.joins.map((join) =>
          /cap/.test(join.id) ? { ...join, ease: { ...join.ease, max: 1.1 * join.ease.target } } : join,
        ),
      }),
    })
    expect(runChecks(near(SPLIT), [capEase]).map(({ where }) => where.piece)).toEqual(['sleeve left', 'sleeve right'])
    expect(runChecks(near(DRAFT.pattern), [capEase]).map(({ where }) => where.piece)).toEqual(['sleeve'])
  })

  test('is nothing to say of a draft as it is', () => {
    expect(runChecks(contextOf(DRAFT.pattern), [capEase])).toEqual([])
  })
})
