import { spawnSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { COMMANDS } from '../../src/cli/commands/commands.ts'
import { scyeHere, temporaryFolder } from '../scye.ts'

describe('scye completion', () => {
  test('bash offers commands, the options of each, values and folders', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'scye.bash'), (await scyeHere(['completion', 'bash'])).stdout)
    mkdirSync(join(folder, 'act one'))
    writeFileSync(join(folder, 'act.yaml'), '')
    const asked = (...words: readonly string[]) => `COMP_WORDS=(scye ${words.map((w) => `'${w}'`).join(' ')})
      COMP_CWORD=${words.length}; _scye 2>/dev/null; printf '%s|' "\${COMPREPLY[@]}"; echo`
    const cases: [string[], string[]][] = [
      [['co'], ['compare', 'completion']],
      [['draft', 'a.yaml', '--mir'], ['--mirror-pairs']],
      [['check', '--pap'], ['']],
      [
        ['draft', '--paper', 'le'],
        ['letter', 'legal'],
      ],
      [['advise', '--place', 'n'], ['neck']],
      [
        ['check', 'act'],
        ['act one', 'act.yaml'],
      ],
      [['cast', 'act.'], ['']],
    ]
    const script = ['source ./scye.bash', ...cases.map(([words]) => asked(...words))].join('\n')
    const { stdout, stderr } = spawnSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8' })
    expect(stderr).toBe('')
    const lines = stdout.trimEnd().split('\n')
    cases.forEach(([words, offered], i) => {
      expect(lines[i]?.split('|').slice(0, -1).sort(), words.join(' ')).toEqual([...offered].sort())
    })
  })

  test.each(['bash', 'zsh', 'fish'])('%s: every command and every option is there', async (shell) => {
    const { status, stdout } = await scyeHere(['completion', shell])
    expect(status).toBe(0)
    for (const { name, options } of COMMANDS) {
      expect(stdout).toContain(name)
      for (const option of Object.keys(options))
        expect(stdout).toContain(shell === 'fish' ? `-l ${option}` : `--${option}`)
    }
  })

  test("a shell that it does not know is refused, as 'unknown-shell'", async () => {
    const { status, stderr } = await scyeHere(['completion', 'bahs'])
    expect(status).toBe(2)
    expect(stderr).toContain('did you mean bash?')
  })
})
