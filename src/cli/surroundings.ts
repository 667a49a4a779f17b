import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

/** Today as an ISO date; SOURCE_DATE_EPOCH (reproducible-builds.org) replaces the clock. */
export function today(): string {
  const epoch = process.env.SOURCE_DATE_EPOCH
  const date = epoch !== undefined && /^\d+$/.test(epoch) ? new Date(Number(epoch) * 1000) : new Date()
  return date.toISOString().slice(0, 10)
}

/** DejaVu Sans, which has the fractions and primes that labels need. */
export function labelFont(): Uint8Array {
  font ??= readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'))
  return font
}

let font: Uint8Array | undefined

/** The schema of performer files that comes with this package, as a URL for editors. */
export function schemaUrl(): string {
  return new URL('../src/schema/performer.schema.json', import.meta.url).href
}
