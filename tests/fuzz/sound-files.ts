import { readdirSync, readFileSync } from 'node:fs'
import { stringify } from 'yaml'
import { SAMPLES } from '../fitting/samples/samples.ts'

const EXAMPLES = new URL('../../examples/', import.meta.url)

/** Measures that every sample of a correction is made for, mm. */
const BODY = {
  'neck base girth': '375',
  'shoulder length': '137',
  'shoulder slope': '22 deg',
  'bust girth': '959',
  'waist girth': '759',
  'back waist length': '416',
  'scye depth': '197',
  'back width': '371',
  'front width': '349',
  'front waist length': '454',
  'upper arm girth': { left: '298', right: '298' },
  'wrist girth': '162',
  'outer arm length': '578',
}

const CHOICES: readonly Readonly<Record<string, unknown>>[] = [
  {},
  { fit: 'standing', cloth: 'soft wool', opening: 'none' },
  { fit: 'easy', 'elbow darts': 'one', ease: { cap: '5 %' } },
  { 'bust dart': 'flat', opening: 'center front', 'elbow darts': 'none' },
]

/**
 * Performer files that can be used, to be spoilt: the examples, and each way of writing each correction, two to a
 * fitting, in a draft of its own kind.
 */
export function soundFiles(): string[] {
  const examples = readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readFileSync(new URL(name, EXAMPLES), 'utf8'))
  const corrections = Object.entries(SAMPLES).flatMap(([name, samples]) =>
    samples.map(({ written, amounts: [least, most], oneSided }, k) => ({
      do: name,
      ...written((least + most) / 2),
      side: oneSided === false || k % 2 === 0 ? 'both' : 'left',
      seen: 'what was seen',
    })),
  )
  const half = Math.ceil(corrections.length / 2)
  const generated = corrections.slice(0, half).map((first, k) => {
    const second = corrections[half + k]
    const choices = CHOICES[k % CHOICES.length] as Readonly<Record<string, unknown>>
    return stringify({
      performer: 'Lamplighter',
      production: 'The Tin Orchard',
      units: 'mm',
      measured: '2026-10-02',
      body: BODY,
      draft: { fit: 'close', ...choices },
      'mock-up': { allowance: { default: '25', neckline: '12' } },
      fittings: [
        { label: 'first fitting', date: '2026-10-09', 'mock-up': 1, corrections: [first] },
        ...(second ? [{ label: 'second fitting', 'mock-up': 2, corrections: [second] }] : []),
      ],
    })
  })
  return [...examples, ...generated]
}
