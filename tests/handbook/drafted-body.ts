import { stringify } from 'yaml'
import type { Report } from '../../src/checks/report.ts'
import { makePattern } from '../../src/pipeline.ts'
import { patternJson } from '../../src/writers/pattern-json.ts'
import { complaints, type Pt, pointOnSide, type RawPattern, sideLength } from '../independent-reader.ts'
import type { PublishedBody } from './published-bodies.ts'

export interface DraftedBody {
  readonly report: Report
  readonly raw: RawPattern
  /** Sewn length of a seam, mm, measured on pattern.json by the independent reader. */
  readonly length: (piece: string, seam: string) => number
  /** The point `along` mm from a seam's start. */
  readonly at: (piece: string, seam: string, along: number) => Pt
  readonly end: (piece: string, seam: string) => Pt
  /** Front and back armscye together, mm. */
  readonly armscye: number
  /** From the biceps line to the crown, mm. */
  readonly capHeight: number
}

/** The pattern of a published body by the main path, measured on pattern.json alone; throws where it does not draft. */
export function draftedBody(body: PublishedBody, draft: Readonly<Record<string, unknown>> = {}): DraftedBody {
  const text = stringify({ performer: 'Lamplighter', units: 'in', body, draft })
  const made = makePattern(text, 'handbook.yaml')
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const { pattern, report } = made.value
  const raw = patternJson(pattern, { performer: 'Lamplighter', version: 'draft' }) as unknown as RawPattern
  const length = (piece: string, seam: string) => sideLength(raw, [{ piece, seam, reversed: false }])
  const at = (piece: string, seam: string, along: number) => pointOnSide(raw, [{ piece, seam, reversed: false }], along)
  const end = (piece: string, seam: string) => at(piece, seam, length(piece, seam))
  return {
    report,
    raw,
    length,
    at,
    end,
    armscye: length('bodice front', 'armscye') + length('bodice back', 'armscye'),
    capHeight: end('sleeve', 'front cap')[1],
  }
}

/** What cannot be sewn: the product's own errors, the independent reader's complaints, measures off by over 0.1 mm. */
export function faults({ report, raw }: DraftedBody): string[] {
  return [
    ...report.findings.filter(({ severity }) => severity === 'error').map(({ code, actual }) => `${code}: ${actual}`),
    ...complaints(raw),
    ...report.measures
      .filter(({ asked, drafted }) => !(Math.abs(asked - drafted) <= 0.1))
      .map(({ name, asked, drafted }) => `${name}: asked ${asked}, drafted ${drafted}`),
  ]
}

export function distance(a: Pt, b: Pt): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}
