import {
  EXPLANATION_FORMATS,
  type ExplanationFormat,
  type Paper,
  type Problem,
  type Result,
  writeExplanation,
} from '../index.ts'
import { readCommon, readList, readText } from './common-options.ts'
import { folderFor } from './draft-command.ts'
import { makeAll, problemsIn } from './make.ts'
import { oneFile, optionProblem, readFormatsOf, readPapers, readPieces } from './options.ts'
import { writeFiles } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { fileLines } from './summary.ts'
import { labelFont, today } from './surroundings.ts'
import type { Terminal } from './terminal.ts'

interface ExplainOptions {
  readonly file: string
  readonly json: boolean
  readonly quiet: boolean
  readonly output?: string
  readonly formats: readonly ExplanationFormat[]
  readonly paper?: Paper
  readonly pieces?: readonly string[]
}

/** `scye explain`: writes the draft of one file, before any fitting, as steps for drawing it by hand; checks nothing. */
export async function explainCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const options = readOptions(typed)
  const json = options.ok ? options.value.json : typed.json === true
  const refuse = (problems: readonly Problem[], textOf: (file: string) => string | undefined = () => undefined) =>
    reportProblems(problems, { json, written: true }, textOf, terminal)
  if (!options.ok) return refuse(options.problems)
  const { file, quiet, output, formats, paper, pieces } = options.value
  const { each, textOf } = makeAll({ files: [file], json, quiet, raw: false, until: 'none' })
  const made = each[0]?.result
  if (!made?.ok) return refuse(problemsIn(made ? [made] : []), textOf)
  const explained = await writeExplanation(made.value, {
    formats,
    date: today(),
    font: labelFont,
    ...(paper === undefined ? {} : { paper }),
    ...(pieces === undefined ? {} : { pieces }),
  })
  if (!explained.ok) return refuse(explained.problems)
  const folder = folderFor(file, made.value, { files: [file], ...(output === undefined ? {} : { output }) })
  const written = writeFiles(folder, explained.value.files)
  if (!written.ok) return refuse(written.problems)
  if (json) terminal.out(`${JSON.stringify(explained.value.document, null, 2)}\n`)
  else if (!quiet) {
    const style = terminal.styleOut
    const { performer, sections } = explained.value.document
    const lines = sections.map(
      ({ title, steps }) => `  ${title}: ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}`,
    )
    // Other files of the folder are not this command's to speak of.
    const files = fileLines({ ...written.value, left: [] }, style)
    terminal.out(`${[style.strong(`${performer}, the draft by hand`), ...lines, '', ...files].join('\n')}\n`)
  }
  return 0
}

function readOptions(typed: Typed): Result<ExplainOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  const formats = readFormatsOf(readList(typed, 'as'), EXPLANATION_FORMATS, EXPLANATION_FORMATS)
  const papers = readPapers(readList(typed, 'paper'))
  const pieces = readPieces(readList(typed, 'pieces'))
  if (!common.ok || !output.ok || !formats.ok || !papers.ok || !pieces.ok)
    return { ok: false, problems: problemsIn([common, output, formats, papers, pieces]) }
  const { files, json, quiet } = common.value
  const [file] = files
  if (file === undefined || files.length > 1)
    return {
      ok: false,
      problems: [oneFile(files, 'one performer file, whose draft is explained', 'explain one file at a time')],
    }
  const [paper, ...more] = papers.value ?? []
  if (more.length > 0) return { ok: false, problems: [onePaper(1 + more.length)] }
  return {
    ok: true,
    value: {
      file,
      json,
      quiet,
      formats: formats.value,
      ...(output.value === undefined ? {} : { output: output.value }),
      ...(paper === undefined ? {} : { paper }),
      ...(pieces.value === undefined ? {} : { pieces: pieces.value }),
    },
  }
}

function onePaper(count: number): Problem {
  return optionProblem('--paper', {
    code: 'one-paper',
    actual: `${count} papers`,
    expected: 'one paper for the pages of the PDF',
    hint: 'name one paper, such as a4 or letter',
  })
}
