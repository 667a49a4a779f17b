import { chmodSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Choice, Prompts } from '../../src/cli/prompts.ts'
import { settingQuestion } from '../../src/cli/setting-questions.ts'
import { CORRECTIONS, makePattern, makeReaders, type Problem, settingKinds } from '../../src/index.ts'
import { lamplighter, scye, scyeHere, temporaryFolder } from '../scye.ts'

const DEMO = readFileSync(lamplighter, 'utf8')

/** A performer file of its own. */
function file(text: string = DEMO): { readonly folder: string; readonly path: string } {
  const folder = temporaryFolder()
  const path = join(folder, 'ferry-pilot.yaml')
  writeFileSync(path, text)
  return { folder, path }
}

const LET_OUT = ['--do', 'let out', '--seam', 'wrist', '--by', '1/4', '--seen', 'tight: at the wrist']

/** Somebody who gives these answers in turn: names that are offered, texts that pass, yes and no. */
function somebody(answers: readonly (string | boolean)[]): {
  readonly ask: () => Promise<Prompts>
  readonly asked: string[]
} {
  const left = [...answers]
  const asked: string[] = []
  const next = (message: string) => {
    asked.push(message)
    const answer = left.shift()
    if (answer === undefined) throw new Error(`nobody answers: ${message}`)
    return answer
  }
  const prompts: Prompts = {
    select: async <T>({ message, choices }: { readonly message: string; readonly choices: readonly Choice<T>[] }) => {
      const answer = next(message)
      const choice = choices.find(({ name }) => name === answer)
      asked.push(...choices.map(({ name }) => `  ${name}`))
      if (!choice) throw new Error(`${message} "${answer}" is not among ${choices.map(({ name }) => name).join(' | ')}`)
      return choice.value
    },
    input: async ({ message, validate }) => {
      const answer = String(next(message))
      const fault = validate?.(answer) ?? true
      if (fault === true) return answer
      asked.push(`! ${fault}`)
      return prompts.input({ message, ...(validate ? { validate } : {}) })
    },
    confirm: async ({ message }) => next(message) === true,
  }
  return { ask: async () => prompts, asked }
}

describe('scye record with options', () => {
  test('as a process: adds the correction, says it in the words of the slip, draws it, and keeps the mode', () => {
    const { folder, path } = file()
    chmodSync(path, 0o640)
    const { status, stdout, stderr } = scye(['record', 'ferry-pilot.yaml', ...LET_OUT], { cwd: folder })
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(readFileSync(path, 'utf8')).toBe(
      `${DEMO.trimEnd()}\n      - do: let out\n        seam: wrist\n        by: 1/4\n        seen: "tight: at the wrist"\n`,
    )
    expect(statSync(path).mode & 0o777).toBe(0o640)
    expect(stdout).toContain('3. Both sides: let out the wrist by 1/4 in')
    expect(stdout).toMatch(/^ {3}Seen {4}tight: at the wrist$/m)
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100)
    expect(readdirSync(folder).sort()).toEqual(['ferry-pilot-pattern', 'ferry-pilot.yaml'])
    const svg = readFileSync(join(folder, 'ferry-pilot-pattern', 'preview.svg'), 'utf8')
    expect(svg).toContain('id="sleeve-lines-before"')
    expect(svg).not.toContain('id="bodice-back')
    expect(svg).toContain('¼″')
  })

  test('there is an option for every setting of every correction', async () => {
    const help = (await scyeHere(['record', '--help'])).stdout
    for (const correction of CORRECTIONS) {
      expect(help.replace(/\s+/g, ' ')).toContain(correction.name)
      for (const { name } of settingKinds(correction, makeReaders('mm')))
        expect(help).toMatch(new RegExp(`--${name.replace(/ /g, '-')} `))
    }
    expect((await scyeHere(['record', lamplighter, '--tapr-to', 'x', '--json'])).stdout).toContain(
      'did you mean --taper-to?',
    )
  })

  test('places are read in words; a new fitting begins with its label', async () => {
    const { path } = file(`${DEMO.split('fittings:')[0]?.trimEnd()}\n`)
    const places = [
      '--at',
      'cap line, front',
      '--at',
      '1 in from shoulder notch toward back notch',
      '--taper-to',
      'the underarm',
    ]
    const fitting = [
      '--fitting',
      'second fitting',
      '--date',
      '2026-10-16',
      '--mock-up',
      '2',
      '--provisional',
      'stand-in',
    ]
    const { status, stderr, stdout } = await scyeHere([
      'record',
      path,
      '--do',
      'Let-out',
      '--seam',
      'cap',
      '--by',
      '1/8',
      ...places,
      ...fitting,
    ])
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toContain('in a new fitting')
    expect(readFileSync(path, 'utf8').split('\nfittings:\n')[1]).toBe(`  - label: second fitting
    date: 2026-10-16
    mock-up: 2
    provisional: stand-in
    corrections:
      - do: Let-out
        seam: cap
        by: 1/8
        at: [ { line: cap line, side of cap: front }, { from: shoulder notch, toward: back notch, distance: 1 in } ]
        taper to: underarm
`)
  })

  test('what was recorded is what the file then makes, also with line ends of another kind', async () => {
    const { path } = file(DEMO.replaceAll('\n', '\r\n'))
    const run = await scyeHere(['record', path, ...LET_OUT, '--json'])
    const document = JSON.parse(run.stdout)
    expect(document).toMatchObject({
      scyewright: 'record/1',
      recorded: true,
      fitting: 'first fitting',
      newFitting: false,
      correction: 3,
      slip: { do: 'let out', what: 'let out the wrist by 1/4 in', seen: 'tight: at the wrist' },
      files: ['preview.svg'],
    })
    const text = readFileSync(path, 'utf8')
    expect(text.match(/[^\r]\n/)).toBeNull()
    const made = makePattern(text, path)
    expect(made.ok && made.value.report.slip[2]).toEqual(document.slip)
  })

  test('--dry-run says the same and writes nothing', async () => {
    const { folder, path } = file()
    const { status, stdout } = await scyeHere(['record', path, ...LET_OUT, '--dry-run'])
    expect(status).toBe(0)
    expect(stdout).toMatch(/^Nothing was written\. It would stand in .*\n/)
    expect(stdout).toContain('let out the wrist by 1/4 in')
    expect(readFileSync(path, 'utf8')).toBe(DEMO)
    expect(readdirSync(folder)).toEqual(['ferry-pilot.yaml'])
  })

  test('more than the allowance is recorded, and is an error finding', async () => {
    const { path } = file()
    const { status, stdout } = await scyeHere(['record', path, ...LET_OUT.with(5, '1 1/4')])
    expect(status).toBe(1)
    expect(stdout).toContain('on a mock-up cut with 1 in')
    expect(readFileSync(path, 'utf8')).toContain('by: 1 1/4')
  })

  test.each([
    [
      'an unknown correction',
      ['--do', 'lett out', '--by', '1/4'],
      'unknown-name',
      '--do',
      'did you mean \\"let out\\"?',
    ],
    ['a length that is none', LET_OUT.with(5, '1/4 elephants'), 'unknown-unit', '--by', 'elephants'],
    ['a setting that is missing', LET_OUT.slice(0, 4), 'missing', '--by', 'length'],
    ['a setting of another correction', [...LET_OUT, '--keep', 'cap height'], 'unknown-key', '--keep', 'taper to'],
    [
      'a place that is not on the seam',
      [...LET_OUT, '--at', 'cap line'],
      'unknown-place',
      '--at',
      'front underarm seam',
    ],
    ['a bracket that does not close', [...LET_OUT, '--at', '{ line: cap line'], 'not-a-place', '--at', 'brackets'],
    ['what cannot be drawn', ['--do', 'raise cap', '--by', '30'], 'taper-too-short', '--by', 'by'],
    ['a value twice', [...LET_OUT, '--by', '1/2'], 'option-twice', '--by', '2 times'],
    ['a side that is none', [...LET_OUT, '--side', 'up'], 'unknown-name', '--side', 'left, right, both'],
    ['settings without a name', ['--by', '1/4'], 'missing', '--do', 'let out'],
    ['nothing at all', [], 'nothing-to-record', undefined, 'in a terminal'],
    [
      'another date than the fitting has',
      [...LET_OUT, '--date', '2026-10-10'],
      'fitting-says-otherwise',
      '--date',
      '2026-10-09',
    ],
    [
      'a label that is nearly another',
      [...LET_OUT, '--fitting', 'First fiting'],
      'fitting-unsure',
      '--fitting',
      'first fitting',
    ],
    [
      'no date for a new fitting',
      [...LET_OUT, '--fitting', 'third', '--date', 'monday'],
      'not-a-date',
      '--date',
      '2026-10-09',
    ],
    [
      'a number that the slip does not have',
      ['--void', '3', '--why', 'wrong pin'],
      'unknown-correction',
      '--void',
      'from 1 to 2',
    ],
    ['a number that is none', ['--void', 'two', '--why', 'wrong pin'], 'not-a-count', '--void', 'slip'],
    ['no reason', ['--void', '2'], 'reason-missing', '--why', 'pinned on the wrong side'],
    ['both at once', [...LET_OUT, '--void', '2', '--why', 'wrong pin'], 'either-or', '--do', 'one after the other'],
    ['two files', ['other.yaml', ...LET_OUT], 'one-file', undefined, 'one file at a time'],
  ])('%s is refused and nothing is written', async (_name, args, code, field, words) => {
    const { folder, path } = file()
    const { status, stdout } = await scyeHere(['record', path, ...args, '--json'])
    expect(status, stdout).toBe(2)
    const { problems } = JSON.parse(stdout) as { problems: Problem[] }
    expect(problems.map((problem) => problem.code).join()).toContain(code)
    expect(problems[0]?.where.field).toBe(field)
    expect(stdout).toContain(words)
    expect(readFileSync(path, 'utf8')).toBe(DEMO)
    expect(readdirSync(folder)).toEqual(['ferry-pilot.yaml'])
  })

  test('what a later fitting no longer finds is told with its line in the file as it is', async () => {
    const text = `${DEMO.trimEnd()}\n  - label: second fitting\n    corrections:\n      - do: take in\n        seam: side seam\n        by: 1 1/2\n`
    const { path } = file(text)
    const args = ['--do', 'take in', '--seam', 'side seam', '--by', '2 1/4', '--fitting', 'first fitting']
    const { status, stdout } = await scyeHere(['record', path, ...args, '--json'])
    const { problems = [] } = JSON.parse(stdout) as { problems?: Problem[] }
    expect(readFileSync(path, 'utf8') === text).toBe(status === 2)
    for (const { where } of problems) {
      if (where.fitting !== 'second fitting') continue
      expect(text.split('\n')[(where.line ?? 0) - 1]).toMatch(/by: 1 1\/2|do: take in/)
    }
  })
})

describe('scye record --void', () => {
  test('marks the correction and keeps everything else', async () => {
    const { path } = file()
    const { status, stdout } = await scyeHere(['record', path, '--void', '1', '--why', 'pinned on the wrong side'])
    expect(status).toBe(0)
    expect(readFileSync(path, 'utf8')).toBe(
      DEMO.replace('seen: tight over the upper arm\n', '$&        voided: pinned on the wrong side\n'),
    )
    expect(stdout.replace(/\s+/g, ' ')).toContain('(voided: pinned on the wrong side)')
    const again = await scyeHere(['record', path, '--void', '1', '--why', 'again', '--json'])
    expect(again.status).toBe(2)
    expect(again.stdout).toContain('already-voided')
  })
})

describe('scye record by questions', () => {
  test('asks what the correction has, offers what is on the mock-up, and records what is confirmed', async () => {
    const { folder, path } = file()
    const { ask, asked } = somebody([
      'first fitting',
      'let out',
      'both',
      'front cap',
      '',
      '1/8 elephants',
      '1/8',
      'cap line',
      'no, that is all',
      'a distance from one mark toward another',
      'shoulder notch',
      'front notch',
      '1/2',
      'front notch',
      'no, that is all',
      'tight in front',
      true,
    ])
    const { status, stdout, stderr } = await scyeHere(['record', path], { ask })
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(readFileSync(path, 'utf8')).toBe(`${DEMO.trimEnd()}
      - do: let out
        seam: front cap
        by: 1/8
        at: { line: cap line }
        taper to: [ { from: shoulder notch, toward: front notch, distance: 1/2 }, front notch ]
        seen: tight in front
`)
    const questions = asked.filter((line) => !line.startsWith('  '))
    expect(questions).toEqual(expect.arrayContaining(['Which seam?', 'Where?', 'Where does it taper to nothing?']))
    const by = questions.indexOf('By how much? (such as 3/8 in)')
    expect(questions[by + 1]).toBe('! this one is needed, such as 3/8 in')
    expect(asked).toContain('! "1/8 elephants" in "elephants": write in, cm or mm after the number')
    // Not on the front cap: the back notch; not on this pattern: sides to be joined.
    expect(asked).not.toContain('  back notch')
    expect(asked).not.toContain('  join sides')
    expect(stdout).toMatch(
      /^To be recorded in .*[\s\S]*let out the front cap by 1\/8 in[\s\S]*preview\.svg[\s\S]*Recorded in /,
    )
    expect(existsSync(join(folder, 'ferry-pilot-pattern', 'preview.svg'))).toBe(true)
  })

  test('a new fitting, a name of several and a dart; declined, nothing is recorded', async () => {
    const { path } = file()
    const { ask, asked } = somebody([
      'a new one',
      'second fitting',
      '2026-13-09',
      '2026-10-16',
      '2',
      'move dart',
      'both',
      'waist dart',
      'front',
      'side seam',
      '50 %',
      'leave it out: the middle of the seam',
      '',
      false,
    ])
    const { status, stdout } = await scyeHere(['record', path], { ask })
    expect({ status, end: stdout.trim().split('\n').at(-1) }).toEqual({ status: 0, end: 'Nothing was recorded.' })
    expect(asked).toContain('  bust dart')
    expect(asked.some((line) => line.startsWith('! "2026-13-09"'))).toBe(true)
    expect(readFileSync(path, 'utf8')).toBe(DEMO)
  })

  test('a file changed meanwhile is left as it then is', async () => {
    const { path } = file()
    const changed = DEMO.replace('29 7/8', '30')
    const { ask } = somebody(['first fitting', 'round back', 'both', '1/4', '', true])
    const watching = async () => {
      const prompts = await ask()
      return {
        ...prompts,
        confirm: async (question: Parameters<Prompts['confirm']>[0]) => {
          writeFileSync(path, changed)
          return prompts.confirm(question)
        },
      }
    }
    const { status, stderr } = await scyeHere(['record', path], { ask: watching })
    expect(status).toBe(2)
    expect(stderr).toContain('somebody changed')
    expect(readFileSync(path, 'utf8')).toBe(changed)
    expect(readdirSync(join(path, '..')).sort()).toEqual(['ferry-pilot-pattern', 'ferry-pilot.yaml'])
  })

  test('left with Ctrl-C, nothing is recorded', async () => {
    const { path } = file()
    const left = async (): Promise<Prompts> => {
      const leave = () => Promise.reject(Object.assign(new Error('left'), { name: 'ExitPromptError' }))
      return { select: leave, input: leave, confirm: leave }
    }
    const { status, stderr } = await scyeHere(['record', path], { ask: left })
    expect({ status, stderr }).toEqual({ status: 2, stderr: 'Nothing was recorded.\n' })
    expect(readFileSync(path, 'utf8')).toBe(DEMO)
  })
})

test('every setting has a question of its own', () => {
  for (const correction of CORRECTIONS) {
    for (const kind of settingKinds(correction, makeReaders('in'))) {
      expect(settingQuestion(kind), `${correction.name}, ${kind.name}`).not.toContain('What is the')
    }
  }
})
