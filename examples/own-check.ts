// A check of one's own, a workshop's rule: costumes in repertory go to other wearers, so side seams keep cloth to let out.
// Run it from the project's folder: npx tsx examples/own-check.ts
import { readFileSync } from 'node:fs'
import { CHECKS, defineCheck, formatLength, makePattern } from '../src/index.ts'

/** What the workshop leaves in a side seam, mm: 1 1/2 in. */
const TO_LET_OUT = 38.1

export const letOutLeft = defineCheck({
  name: 'let-out left',
  looksAt: 'whether side seams have cloth for the next wearer',
  codes: ['little-to-let-out'],
  run: ({ pattern, units }) =>
    pattern.pieces.flatMap((piece) =>
      piece.seams
        .filter(({ id, allowance }) => id.startsWith('side seam') && allowance < TO_LET_OUT)
        .map(({ id, allowance }) => ({
          code: 'little-to-let-out',
          severity: 'warning',
          where: { piece: piece.id, seam: id },
          actual: `${formatLength(allowance, units)} of allowance`,
          expected: `${formatLength(TO_LET_OUT, units)} to let out for another wearer`,
          hint: 'write it under mock-up: allowance: side seam',
        })),
    ),
})

/** The Lamplighter's findings, the workshop's own among them. */
export function withOwnCheck(file = readFileSync(new URL('lamplighter.yaml', import.meta.url), 'utf8')) {
  return makePattern(file, 'lamplighter.yaml', { checks: [...CHECKS, letOutLeft] })
}

if (process.argv[1]?.endsWith('own-check.ts')) {
  const made = withOwnCheck()
  if (!made.ok) console.error(made.problems)
  else for (const { where, actual, expected } of made.value.report.findings) console.log(where, actual, expected)
}
