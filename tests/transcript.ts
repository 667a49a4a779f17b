import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))

/** What `scye` is in the transcript: the built command, called as it is after installing. */
const SHELL_START = `scye() { '${process.execPath}' '${join(root, 'bin', 'scye')}' "$@"; }\n`

const FENCE = /^(?:<!-- into (?<file>\S+) -->\n\n)?```(?<kind>console|yaml)\n(?<body>[\s\S]*?)^```$/gm

/**
 * Does in a folder what a page says, in order, and returns the page as it should be: `$` lines of console blocks are run
 * and followed by what they print; a yaml block under `<!-- into FILE -->` is written into the blanks of that file.
 * Throws where a blank is not there.
 */
export function replayTranscript(page: string, folder: string): string {
  return page.replaceAll(FENCE, (block, ...rest) => {
    const { file, kind, body } = rest.at(-1) as { file?: string; kind: string; body: string }
    if (kind === 'yaml') {
      if (file !== undefined) fillIn(join(folder, file), body)
      return block
    }
    const commands = body.split('\n').filter((line) => line.startsWith('$ '))
    const lines = commands.map((line) => `${line}\n${printed(line.slice(2), folder)}`)
    return `\`\`\`console\n${lines.join('\n')}\`\`\``
  })
}

/** What a command prints, both streams in the order in which a terminal shows them. */
function printed(command: string, folder: string): string {
  const { stdout, status } = spawnSync('bash', ['-c', `${SHELL_START}exec 2>&1\n${command}`], {
    cwd: folder,
    encoding: 'utf8',
    // The day of the transcript: nothing that is printed depends on when it is replayed.
    env: { ...process.env, SOURCE_DATE_EPOCH: '1796040000', NO_COLOR: '1', COLUMNS: '80' },
  })
  const ended = status === 0 ? '' : `(exit status ${status})\n`
  return stdout.replaceAll(dirname(folder), '…') + ended
}

/** Writes values into the blanks of a performer file, as one does with an editor. */
function fillIn(file: string, yaml: string): void {
  let text = readFileSync(file, 'utf8')
  for (const [, key, value] of yaml.matchAll(/^ *([a-z -]+): (.+)$/gm)) {
    const blank = new RegExp(`^( *${key}:)(?: *)(?=#|$)`, 'm')
    if (!blank.test(text)) throw new Error(`${file} has no blank "${key}"`)
    text = text.replace(blank, (_line, start) => `${start} ${value}  `)
  }
  writeFileSync(file, text)
}
