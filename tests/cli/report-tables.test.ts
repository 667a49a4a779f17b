import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { roundedParts } from '../../src/cli/rounding.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const ferryPilot = fileURLToPath(new URL('../../examples/ferry-pilot.yaml', import.meta.url))

/** Sixteenths of an inch in `−1 3/16`, or tenths of a millimetre in `−30.2`. */
function ticks(text: string): number {
  const value = text
    .replace(/^[+−]/, '')
    .split(' ')
    .map((part) => {
      const [over, under] = part.split('/').map(Number)
      if (under !== undefined) return (16 * (over ?? Number.NaN)) / under
      return part.includes('.') ? Math.round(10 * Number(part)) : 16 * Number(part)
    })
    .reduce((sum, part) => sum + part, 0)
  return text.startsWith('−') ? -value : value
}

/** The rows under a title, each cut into its columns at two spaces or more. */
function rowsUnder(text: string, title: string): string[][] {
  const lines = text.split('\n')
  const start = lines.findIndex((line) => line.startsWith(title))
  const end = lines.findIndex((line, i) => i > start && line === '')
  return lines.slice(start + 2, end).map((line) => line.trim().split(/ {2,}/))
}

/** A performer file in another unit: its plain numbers are inches, which are written out. */
function inUnit(units: string): string {
  const text = readFileSync(lamplighter, 'utf8')
  const inches = text
    .replace(/^( {2}[a-z ]+: )(\d+(?: \d+\/\d+)?)(?= *(?:#.*)?$)/gm, '$1$2 in')
    .replace('{ upper arm: 2 }', '{ upper arm: 2 in }')
    .replace('{ default: 1, neckline: 1/2 }', '{ default: 1 in, neckline: 1/2 in }')
    .replaceAll(/(by|along cap): ([\d/ ]+)$/gm, '$1: $2 in')
  const file = join(temporaryFolder(), 'pilot.yaml')
  writeFileSync(file, inches.replace('units: in', `units: ${units}`))
  return file
}

describe('the tables of a check', () => {
  test.each([lamplighter, ferryPilot])('the walk adds up on every line and down every join: %s', async (file) => {
    const { stdout } = await scyeHere(['check', file])
    const caps = rowsUnder(stdout, 'Walk: the sleeve')
    const seams = rowsUnder(stdout, 'Walk: the other')
    for (const [name, a = '', b = '', ease = '', back = ''] of caps) {
      const eases = name?.startsWith('whole') ? ticks(ease) + ticks(back) : ticks(ease)
      expect(ticks(a) - ticks(b), name).toBe(eases)
    }
    for (const [name, a = '', b = '', ease = ''] of seams) expect(ticks(a) - ticks(b), name).toBe(ticks(ease))
    for (const rows of [caps, seams]) {
      for (const [i, row] of rows.entries()) {
        const [from, to] = [rows[i + 1], rows[i + 2]]
        if (!/to notch/.test(from?.[0] ?? '') || !from || !to) continue
        for (const column of [1, 2, 3]) {
          expect(ticks(from[column] ?? '') + ticks(to[column] ?? ''), row[0]).toBe(ticks(row[column] ?? ''))
        }
      }
    }
    expect(caps.length + seams.length).toBeGreaterThan(11)
  })

  test.each([lamplighter, ferryPilot])('body and ease make what was asked; cut less used is left: %s', async (file) => {
    const { stdout } = await scyeHere(['check', file])
    for (const [name, , body = '', ease = '', asked = ''] of rowsUnder(stdout, 'Measures')) {
      if (name !== 'shoulder slope') expect(ticks(body) + ticks(ease), name).toBe(ticks(asked))
    }
    for (const [name, cut = '', used = '', left = ''] of rowsUnder(stdout, 'Allowance')) {
      expect(ticks(cut) - ticks(used), name).toBe(ticks(left))
    }
  })

  test('parts add up to their rounded sum, none off by a step or more', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -300, max: 600, noNaN: true }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom('in' as const, 'mm' as const),
        (parts, units) => {
          const step = units === 'in' ? 25.4 / 16 : 0.1
          const shown = roundedParts(parts, units)
          const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)
          expect(Math.abs(sum(shown) - sum(parts))).toBeLessThanOrEqual(step / 2 + 1e-6)
          for (const [i, mm] of shown.entries()) expect(Math.abs(mm - (parts[i] ?? 0))).toBeLessThan(step + 1e-6)
        },
      ),
    )
  })

  test('every word fits 100 columns, in every unit', async () => {
    const files = [lamplighter, ferryPilot, inUnit('cm'), inUnit('mm')]
    for (const file of files) {
      const { status, stdout } = await scyeHere(['check', file])
      expect(status).toBe(0)
      for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100)
      expect(stdout).not.toMatch(/\b0 in \(\d|undefined|NaN/)
    }
  })

  test('angles and growth are told as estimates, without decimals', async () => {
    const { stdout } = await scyeHere(['check', lamplighter])
    const movement = stdout.slice(stdout.indexOf('\nMovement'))
    expect(movement).not.toMatch(/\d\.\d°/)
    expect(movement).toMatch(/^ {2}pair +draft +5 9\/16 .* 52°$/m)
    expect(movement.replace(/\s+/g, ' ')).toContain(
      'grows by about 2 to 3 3/4 in; the pattern has 1/2 in of ease there',
    )
    expect(movement.replace(/\s+/g, ' ')).toContain('Kirk and Ibrahim 1966, from memory')
    const metric = (await scyeHere(['check', inUnit('mm')])).stdout.replace(/\s+/g, ' ')
    expect(metric).toContain('grows by about 50 to 95 mm')
  })

  test('severity and verdict are words, not colors; NO_COLOR is heeded', () => {
    const { stdout } = scye(['check', lamplighter], { env: { NO_COLOR: '1', FORCE_COLOR: '1' } })
    expect(stdout).toMatch(/^ {2}note {5}/m)
    expect(stdout).toMatch(/^ {2}front cap .* sews, nearly full$/m)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colors where nobody looks
    expect(stdout).not.toMatch(/\u001b/)
  })
})
