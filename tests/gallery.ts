// Makes one page with a small picture of every correction before and after: npm run gallery [FILE.html]
import { writeFileSync } from 'node:fs'
import { makeReaders } from '../src/base/readers.ts'
import { compareVersions } from '../src/fitting/compare-versions.ts'
import type { Correction } from '../src/fitting/correction.ts'
import { CORRECTIONS } from '../src/fitting/corrections.ts'
import { type PatternVersion, replay } from '../src/fitting/replay.ts'
import { drafted } from './fitting/bodies.ts'
import type { Sample } from './fitting/samples/sample.ts'
import { SAMPLES } from './fitting/samples/samples.ts'
import { overlay } from './overlay.ts'

const read = makeReaders('mm')
const say = (mm: number) => `${Number(mm.toFixed(1))} mm`
const pattern = drafted()

/** Text as it stands in HTML. */
const plain = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;')

/** The largest amount of a sample on the middle body, as the correction's own pieces before and after. */
function figure(correction: Correction, sample: Sample): string {
  const settings = correction.settings(read).parse(sample.written(sample.amounts[1]))
  const record = { do: correction.name, side: 'both', settings, where: {} } as const
  const fitting = { label: 'after', mockUp: 1, corrections: [record], where: {} }
  const done = replay(pattern, [fitting], { standard: { default: 25.4, neckline: 12.7 }, byMockUp: {} })
  const { what, where } = correction.word(settings, say)
  const words = `<figcaption><b>${plain(sample.name)}</b><br>${plain(what)}; ${plain(where)}</figcaption>`
  if (!done.ok) {
    console.error(`${correction.name}, ${sample.name}: ${done.problems.map((p) => p.actual).join('; ')}`)
    process.exitCode = 1
    return `<figure><p>${plain(done.problems[0]?.actual ?? '')}</p>${words}</figure>`
  }
  const [before, after] = done.value.versions as [PatternVersion, PatternVersion]
  return `<figure>${overlay(compareVersions(before, after), sample.pieces, plain(`${correction.name}, ${sample.name}: before and after`))}${words}</figure>`
}

const sections = CORRECTIONS.map((correction) => {
  const samples = SAMPLES[correction.name] ?? []
  if (samples.length === 0) {
    console.error(`${correction.name} has no sample`)
    process.exitCode = 1
  }
  const leaves = correction.leaves === undefined ? '' : `<p class="leaves">Leaves: ${plain(correction.leaves)}.</p>`
  return `<section><h2>${plain(correction.name)}</h2>
<p>${plain(correction.does)}.</p>
<p class="answers">Answers: ${correction.answers.map(plain).join('; ')}.</p>${leaves}
<div>${samples.map((sample) => figure(correction, sample)).join('')}</div></section>`
})

const page = `<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Every correction, before and after</title>
<style>
body { font: 13px/1.4 'DejaVu Sans', Verdana, sans-serif; max-width: 1240px; margin: 24px auto; padding: 0 16px; color: #111 }
h1 { font-size: 21px; font-weight: 600 } h2 { font-size: 16px; margin: 0 0 4px } p { margin: 2px 0 }
main { display: flex; flex-wrap: wrap; gap: 22px 34px; margin-top: 18px }
section { border-top: 1px solid #999; padding: 10px 0; flex: 1 1 360px; max-width: 760px; break-inside: avoid }
.answers, .leaves, figcaption { color: #444; font-size: 11px }
section div { display: flex; flex-wrap: wrap; gap: 18px } figure { margin: 8px 0 0; width: min-content; min-width: 230px }
svg { background: #fff; display: block }
</style>
<h1>Every correction, before and after</h1>
<p>Before thin and dashed, after solid; an arrow where a line moved most, and by how many mm. Amounts are the largest that the tests use, on
one body of The Tin Orchard.</p>
<main>${sections.join('\n')}</main>
</html>
`
const file = process.argv[2] ?? 'examples/corrections.html'
writeFileSync(file, page)
console.log(`${CORRECTIONS.length} corrections in ${file}`)
