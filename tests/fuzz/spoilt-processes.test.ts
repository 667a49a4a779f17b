import fc from 'fast-check'
import { expect, test } from 'vitest'
import { processFaults } from './judge-process.ts'
import { soundFiles } from './sound-files.ts'
import { spoiltFiles, spoiltText } from './spoil-file.ts'

/** Two at once; a process costs 0.2 to 0.5 s of processor time. */
const PROCESSES = 100

const texts = soundFiles()

test('a process of its own ends with 0, 1 or 2 and leaves nothing behind on 2', async () => {
  const seed = Number(process.env.SCYE_SEED)
  const spoilt = fc.sample(spoiltFiles(texts.length), { numRuns: PROCESSES, seed })
  expect(await processFaults(spoilt.map((one) => spoiltText(texts, one)))).toEqual([])
}, 120_000)
