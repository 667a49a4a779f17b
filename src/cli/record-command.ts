import {
  addCorrection,
  type MadePattern,
  makePattern,
  type Problem,
  type RecordedText,
  type Result,
  voidCorrection,
  writePreview,
} from '../index.ts'
import { folderFor } from './draft-command.ts'
import { readInput } from './input.ts'
import { problemsIn } from './make.ts'
import { replaceFile, type Written, writeFiles } from './output.ts'
import { isLeft, type Prompts } from './prompts.ts'
import { optionOf, type RecordOptions, readRecordOptions } from './record-options.ts'
import { recordProblems } from './record-problems.ts'
import { newFindings, recordedJson, recordedText } from './record-text.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { today } from './surroundings.ts'
import type { Terminal } from './terminal.ts'

/** What is to be recorded, tried on the pattern; nothing is written yet. */
export interface Tried {
  readonly options: RecordOptions
  readonly before: MadePattern
  readonly after: MadePattern
  readonly recorded: RecordedText
}

/** `scye record`: adds a correction to a performer file, or voids one; asks where nothing was said and somebody sits there. */
export async function recordCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const options = readRecordOptions(typed)
  const texts = new Map<string, string>()
  const refuse = (problems: readonly Problem[], written = true) =>
    reportProblems(problems, { json: typed.json === true, written }, (file) => texts.get(file), terminal)
  if (!options.ok) return refuse(options.problems)
  const { file } = options.value
  const input = readInput(file)
  if (!input.ok) return refuse(input.problems)
  const { text, bytes } = input.value
  texts.set(file, text)
  const before = makePattern(text, file)
  if (!before.ok) return refuse(before.problems)
  const asking = isToAsk(options.value)
  const prompts = asking && !options.value.json ? await terminal.ask?.() : undefined
  if (asking && !prompts) return refuse([nothingSaid(file)])
  try {
    const result = await changedText(text, options.value, before.value, prompts)
    if (!result.ok) return refuse(result.problems)
    const recorded = result.value
    const after = makePattern(recorded.text, file)
    if (!after.ok) return refuse(recordProblems(after.problems, recorded, text, asking ? undefined : optionOf))
    const tried: Tried = { options: options.value, before: before.value, after: after.value, recorded }
    return await settle(tried, bytes, prompts, terminal, refuse)
  } catch (error) {
    if (!isLeft(error)) throw error
    terminal.err('Nothing was recorded.\n')
    return 2
  }
}

/** Nothing was said of a correction: it is asked. */
function isToAsk({ said, voiding }: RecordOptions): boolean {
  return voiding === undefined && said.correction.do === undefined
}

async function changedText(
  text: string,
  { file, said, voiding }: RecordOptions,
  before: MadePattern,
  prompts: Prompts | undefined,
): Promise<Result<RecordedText>> {
  const { fittings } = before.performer
  const fitting = said.fitting ?? fittings[fittings.length - 1]?.label ?? 'first fitting'
  if (voiding) return voidCorrection(text, file, fittings, { fitting, ...voiding })
  if (!prompts) return addCorrection(text, file, fittings, { ...said, fitting })
  const { askCorrection } = await import('./ask-correction.ts')
  return addCorrection(text, file, fittings, await askCorrection(prompts, { made: before, said, today: today() }))
}

/** Says it back; asks, where somebody was asked before; then writes the file and the figure. */
async function settle(
  tried: Tried,
  bytes: Buffer,
  prompts: Prompts | undefined,
  terminal: Terminal,
  refuse: (problems: readonly Problem[], written?: boolean) => Status,
): Promise<Status> {
  const { options, recorded } = tried
  const { file, json, quiet, dryRun } = options
  const say = (written: Written | undefined, isRecorded: boolean) => {
    if (json) terminal.out(`${JSON.stringify(recordedJson(tried, written, isRecorded), null, 2)}\n`)
    else if (!quiet || prompts) terminal.out(recordedText(tried, written, isRecorded, terminal.styleOut))
  }
  let figure: Written | undefined
  if (prompts && !dryRun) {
    const written = await preview(tried)
    if (!written.ok) return refuse(written.problems)
    figure = written.value
    terminal.out(recordedText(tried, figure, undefined, terminal.styleOut))
    if (!(await prompts.confirm({ message: `Record it in ${file}?`, default: true }))) {
      terminal.out('Nothing was recorded.\n')
      return 0
    }
  }
  if (!dryRun) {
    const replaced = replaceFile(file, bytes, recorded.text)
    if (!replaced.ok) return refuse(replaced.problems, figure === undefined)
    if (!figure) {
      const written = await preview(tried)
      // The correction is in the file: a figure that cannot be written does not undo it.
      if (!written.ok)
        terminal.err(
          `${problemsIn([written])
            .map(({ actual, hint }) => `No figure: ${actual}; ${hint}`)
            .join('\n')}\n`,
        )
      else figure = written.value
    }
  }
  if (prompts && !dryRun) terminal.out(`Recorded in ${file}.\n`)
  else say(figure, !dryRun)
  return newFindings(tried).some(({ severity }) => severity === 'error') ? 1 : 0
}

async function preview({ options, before, after, recorded }: Tried): Promise<Result<Written>> {
  const { file, output } = options
  const { correction, fitting } = recorded
  const change = `${options.voiding ? 'without' : 'with'} correction ${correction} of ${fitting}`
  const content = await writePreview(before, after, { date: today(), change })
  const folder = folderFor(file, after, { files: [file], ...(output === undefined ? {} : { output }) })
  return writeFiles(folder, [content])
}

function nothingSaid(file: string): Problem {
  return {
    code: 'nothing-to-record',
    where: { file },
    actual: 'no correction',
    expected: 'what was done, with --do and its settings; or --void and a number',
    hint: 'as in --do "let out" --seam wrist --by 1/4; in a terminal, without options and --json, it is asked',
  }
}
