import type { Problem } from '../index.ts'
import { COMMANDS } from './commands/commands.ts'
import { didYouMean, optionProblem } from './options.ts'
import { reportProblems } from './report-problems.ts'
import type { Status } from './run.ts'
import type { Terminal } from './terminal.ts'

/** Says what was typed wrongly, as problems like any others. `message` is yargs's own, in English. */
export async function reportUsage(message: string, args: readonly string[], terminal: Terminal): Promise<Status> {
  return reportProblems(
    await problemsOf(message, args),
    { json: args.includes('--json'), written: true },
    () => undefined,
    terminal,
  )
}

async function problemsOf(message: string, args: readonly string[]): Promise<Problem[]> {
  const name = args.find((arg) => !arg.startsWith('-'))
  const names = COMMANDS.map((command) => command.name)
  const command = COMMANDS.find((known) => known.name === name)
  if (name === undefined || command === undefined) {
    return [
      {
        code: name === undefined ? 'no-command' : 'unknown-command',
        where: {},
        actual: name === undefined ? 'no command' : `"${name}"`,
        expected: `one of ${names.join(', ')}`,
        hint: (name === undefined ? undefined : didYouMean(name, names)) ?? 'see scye --help',
      },
    ]
  }
  const unknown = /^Unknown arguments?: (.+)$/.exec(message)
  if (unknown) {
    const more = Object.keys((await command.moreOptions?.()) ?? {})
    const options = [...more, ...Object.keys(command.options), 'help', 'version']
    return (unknown[1] ?? '').split(', ').map((option) => unknownOption(option, options))
  }
  const bare = /^Not enough arguments following: (.+)$/.exec(message)
  if (bare) {
    const option = dashed(bare[1] ?? '')
    const hint = `write ${option} and a value after it, or leave it out`
    return [optionProblem(option, { code: 'empty-option', actual: 'nothing after it', expected: 'a value', hint })]
  }
  if (message.startsWith('Not enough non-option arguments')) {
    const hint = `scye ${args[0] ?? 'draft'} lamplighter.yaml; - reads standard input`
    return [{ code: 'no-file', where: {}, actual: 'no file', expected: 'at least one performer file', hint }]
  }
  return [
    {
      code: 'usage',
      where: {},
      actual: message,
      expected: 'a command, its options and files',
      hint: 'see scye --help',
    },
  ]
}

function unknownOption(name: string, known: readonly string[]): Problem {
  const expected = `one of ${known.map(dashed).join(', ')}`
  const near = didYouMean(name, known)?.replace('mean ', 'mean --')
  return optionProblem(dashed(name), {
    code: 'unknown-option',
    actual: 'no such option',
    expected,
    hint: near ?? 'see scye --help',
  })
}

function dashed(name: string): string {
  return name.length === 1 ? `-${name}` : `--${name}`
}
