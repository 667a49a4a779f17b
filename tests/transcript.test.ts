import { cpSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { temporaryFolder } from './scye.ts'
import { replayTranscript } from './transcript.ts'

const examples = fileURLToPath(new URL('../examples/', import.meta.url))

test('the day in the shop goes as examples/README.md says, word for word', async () => {
  const folder = temporaryFolder()
  for (const name of readdirSync(examples).filter((file) => file.endsWith('.yaml'))) {
    cpSync(join(examples, name), join(folder, name))
  }
  const page = readFileSync(join(examples, 'README.md'), 'utf8')
  await expect(replayTranscript(page, folder)).toMatchFileSnapshot(join(examples, 'README.md'))
})
