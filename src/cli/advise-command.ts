import { ADVICE_PLACES, type Advice, type AdvicePlace, adviceFor, type Problem, type Result } from '../index.ts'
import { adviceList, adviceText } from './advice-text.ts'
import { readCommon, readText } from './common-options.ts'
import type { AdviceJson } from './documents.ts'
import { problemsIn } from './make.ts'
import { didYouMean, optionProblem } from './options.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import type { Terminal } from './terminal.ts'

interface AdviseOptions {
  readonly words: string
  readonly json: boolean
  readonly quiet: boolean
  readonly place?: AdvicePlace
}

/** `scye advise`: from what is seen to what to try; without words, the list of what there is advice on. */
export function adviseCommand(typed: Typed, terminal: Terminal): Status {
  const refuse = (problems: readonly Problem[], json: boolean) =>
    reportProblems(problems, { json, written: false }, () => undefined, terminal)
  const options = readOptions(typed)
  if (!options.ok) return refuse(options.problems, typed.json === true)
  const { words, json, quiet, place } = options.value
  const advice = adviceFor(words, place === undefined ? {} : { place })
  if (advice.entries.length === 0) return refuse([nothingFound(words, place, advice.unknown)], json)
  if (json) {
    const asked = { ...(words === '' ? {} : { words }), ...(place === undefined ? {} : { place }) }
    const document: AdviceJson = { scyewright: 'advice/1', source: 'common practice', ...asked, ...advice }
    terminal.out(`${JSON.stringify(document, null, 2)}\n`)
  } else if (quiet) return 0
  else if (words === '') terminal.out(adviceList(advice.entries, place, terminal.styleOut))
  else terminal.out(adviceText(advice, terminal.styleOut))
  return 0
}

function readOptions(typed: Typed): Result<AdviseOptions> {
  // A word said twice is no mistake, as a file named twice is.
  const { words: said, '--': more, ...rest } = typed
  const common = readCommon(rest)
  const place = readText(typed, 'place')
  const known = place.ok ? readPlace(place.value) : place
  if (!common.ok || !known.ok) return { ok: false, problems: problemsIn([common, known]) }
  const words = [said, more].flatMap((list) => (Array.isArray(list) ? list.map(String) : [])).join(' ')
  const { json, quiet } = common.value
  return {
    ok: true,
    value: { words: words.trim(), json, quiet, ...(known.value === undefined ? {} : { place: known.value }) },
  }
}

function readPlace(text: string | undefined): Result<AdvicePlace | undefined> {
  const name = text?.trim().toLowerCase()
  const place = ADVICE_PLACES.find((known) => known === name)
  if (name === undefined || place) return { ok: true, value: place }
  const expected = `one of ${ADVICE_PLACES.join(', ')}`
  const hint = didYouMean(name, ADVICE_PLACES) ?? 'leave --place out to search everywhere'
  return {
    ok: false,
    problems: [optionProblem('--place', { code: 'unknown-place', actual: `"${name}"`, expected, hint })],
  }
}

function nothingFound(words: string, place: AdvicePlace | undefined, unknown: Advice['unknown']): Problem {
  const near = unknown.flatMap(({ nearest }) => nearest ?? [])
  const elsewhere = place !== undefined && adviceFor(words).entries.length > 0
  return {
    code: 'no-advice',
    where: {},
    actual: `nothing on "${words}"${place === undefined ? '' : ` at the ${place}`}`,
    expected: 'words for what is seen, such as tight upper arm, gapes, cannot reach',
    hint: elsewhere
      ? 'leave --place out: there is advice on it at other places'
      : near.length > 0
        ? `did you mean ${near.join(', ')}?`
        : 'scye advise, without words, lists what there is advice on',
  }
}
