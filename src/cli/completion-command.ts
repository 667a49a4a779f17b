import { ADVICE_PLACES, FORMATS, PAPER_NAMES } from '../index.ts'
import type { Command, Completion } from './commands/command.ts'
import { bashCompletion, type CompletionTable, fishCompletion, zshCompletion } from './completion-scripts.ts'
import { didYouMean } from './options.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import type { Terminal } from './terminal.ts'

const SCRIPTS: Readonly<Record<string, (table: CompletionTable) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
}

/** `scye completion`: the script of a shell, made of the same table as help and parsing. */
export async function completionCommand(
  typed: Typed,
  commands: readonly Command[],
  terminal: Terminal,
): Promise<Status> {
  const name = String(typed.shell)
  const script = SCRIPTS[name]
  if (script) {
    terminal.out(script(await Promise.all(commands.map(completedCommand))))
    return 0
  }
  const shells = Object.keys(SCRIPTS)
  const problem = {
    code: 'unknown-shell',
    where: {},
    actual: `"${name}"`,
    expected: `one of ${shells.join(', ')}`,
    hint: didYouMean(name, shells) ?? 'bash and zsh read it with: source <(scye completion bash)',
  }
  return reportProblems([problem], { json: false, written: false }, () => undefined, terminal)
}

async function completedCommand({ name, about, words, options, moreOptions }: Command) {
  const all = { ...options, ...(await moreOptions?.()) }
  return {
    name,
    about,
    word: values(Object.values(words)[0]?.complete),
    options: [
      ...Object.entries(all).map(([option, { alias, describe, type, complete }]) => ({
        name: option,
        ...(typeof alias === 'string' ? { short: alias } : {}),
        about: describe ?? '',
        ...(type === 'boolean' ? {} : { value: values(complete) }),
      })),
      { name: 'help', about: 'show help' },
    ],
  }
}

function values(complete: Completion | undefined): 'file' | 'folder' | readonly string[] {
  if (complete === 'format') return FORMATS
  if (complete === 'paper') return PAPER_NAMES
  if (complete === 'place') return ADVICE_PLACES
  return complete ?? []
}
