import { basename, dirname, extname, join, resolve } from 'node:path'
import {
  correctionReaders,
  FORM_FORMATS,
  type FormFormat,
  type FormJson,
  type MadePattern,
  makePattern,
  type Paper,
  type Performer,
  type Problem,
  type Result,
  readPerformer,
  writeForms,
} from '../index.ts'
import { readCommon, readList, readText } from './common-options.ts'
import { readInput } from './input.ts'
import { problemsIn } from './make.ts'
import { oneFile, readFormatsOf, readPapers } from './options.ts'
import { type Written, writeFiles } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { fileLines } from './summary.ts'
import { labelFont, today } from './surroundings.ts'
import type { Style, Terminal } from './terminal.ts'

/** Forms are printed; SVG is asked for by name. */
const USUAL_FORMATS: readonly FormFormat[] = ['pdf']

interface FormCommandOptions {
  readonly file?: string
  readonly json: boolean
  readonly quiet: boolean
  readonly output?: string
  readonly formats: readonly FormFormat[]
  readonly papers?: readonly Paper[]
}

/** Whose forms they are: what the file says, its pattern where it can be drafted, and the text that problems point into. */
interface Subject {
  readonly performer: Performer
  readonly made?: MadePattern
}

/** `scye form`: a measuring sheet and a fitting sheet, blank or for a performer file, which need not be measured yet. */
export async function formCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const options = readOptions(typed)
  const json = options.ok ? options.value.json : typed.json === true
  const refuse = (problems: readonly Problem[], text?: string) =>
    reportProblems(problems, { json, written: true }, () => text, terminal)
  if (!options.ok) return refuse(options.problems)
  const { file, quiet, output, formats, papers } = options.value
  const input = file === undefined ? undefined : readInput(file)
  if (input && !input.ok) return refuse(input.problems)
  const subject = input && subjectOf(input.value.text, input.value.name)
  if (subject && !subject.ok) return refuse(subject.problems, input.value.text)
  const forms = await writeForms({
    ...subject?.value,
    formats,
    ...(papers === undefined ? {} : { papers }),
    date: today(),
    font: labelFont,
  })
  const written = writeFiles(folderOf(file, output), forms.files)
  if (!written.ok) return refuse(written.problems)
  if (json) terminal.out(`${JSON.stringify(forms.document, null, 2)}\n`)
  else if (!quiet) terminal.out(summary(forms.document, written.value, terminal.styleOut))
  return 0
}

function subjectOf(text: string, name: string): Result<Subject> {
  const performer = readPerformer(text, name, correctionReaders, { unmeasured: true })
  if (!performer.ok) return performer
  // Measures that are missing or cannot be are what a form is for: then the outlines are a standard body's.
  const made = makePattern(text, name)
  return { ok: true, value: { performer: performer.value, ...(made.ok ? { made: made.value } : {}) } }
}

function readOptions(typed: Typed): Result<FormCommandOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  const formats = readFormatsOf(readList(typed, 'as'), FORM_FORMATS, USUAL_FORMATS)
  const papers = readPapers(readList(typed, 'paper'))
  if (!common.ok || !output.ok || !formats.ok || !papers.ok) {
    return { ok: false, problems: problemsIn([common, output, formats, papers]) }
  }
  const { files, json, quiet } = common.value
  const [file] = files
  if (files.length > 1) {
    const expected = 'one performer file, or none for blank sheets'
    return { ok: false, problems: [oneFile(files, expected, 'make the forms of one performer at a time')] }
  }
  return {
    ok: true,
    value: {
      json,
      quiet,
      formats: formats.value,
      ...(file === undefined ? {} : { file }),
      ...(output.value === undefined ? {} : { output: output.value }),
      ...(papers.value === undefined ? {} : { papers: papers.value }),
    },
  }
}

/** `-o DIR`; without it <stem>-pattern beside the file, and blank sheets where the command is run. */
function folderOf(file: string | undefined, output: string | undefined): string {
  if (output !== undefined) return resolve(output)
  if (file === undefined || file === '-') return resolve('.')
  return join(resolve(dirname(file)), `${basename(file, extname(file))}-pattern`)
}

function summary(
  { performer, production, outlines, version, sheets }: FormJson,
  written: Written,
  style: Style,
): string {
  const title = [performer ?? 'Blank sheets', production].filter((part) => part).join(' · ')
  const pages = sheets.map(
    ({ sheet, paper, pages }) => `  ${sheet} sheet, ${paper}: ${pages} page${pages === 1 ? '' : 's'}`,
  )
  const standard =
    performer === undefined ? 'a standard body' : 'a standard body: the performer’s cannot be drafted yet'
  const of = outlines === 'pattern' ? `the pattern, ${version}` : standard
  const blocks = [[style.strong(title), ...pages, `  outlines of ${of}`], fileLines({ ...written, left: [] }, style)]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
