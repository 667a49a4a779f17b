import fc from 'fast-check'
import { expect, test } from 'vitest'
import { judgeFile } from './judge-file.ts'
import { processFaults } from './judge-process.ts'
import { soundFiles } from './sound-files.ts'
import { spoiltFiles, spoiltText } from './spoil-file.ts'

const FILES = 1000
/** A process costs 0.2 to 0.5 s of processor time; 100 of them, and 20,000 files, run under `npm run survey`. */
const PROCESSES = 60
/** Of a thousand files, those whose sheets are written too. */
const DRAWN = 8
const PRINTED = 2

const texts = soundFiles()

test('every file that is spoilt stays sound before it is', async () => {
  for (const text of texts) {
    const { drafted, errors, faults } = await judgeFile(text)
    expect({ drafted, errors, faults }, text).toEqual({ drafted: true, errors: [], faults: [] })
  }
}, 120_000)

test('a spoilt file drafts a pattern that can be sewn, or says what is wrong with it and where', async () => {
  const share = fc.nat(999)
  await fc.assert(
    fc.asyncProperty(spoiltFiles(texts.length), share, async (spoilt, number) => {
      const write = number < PRINTED ? 'pdf' : number < DRAWN ? 'svg' : undefined
      const { faults } = await judgeFile(spoiltText(texts, spoilt), write ? { write } : {})
      expect(faults).toEqual([])
    }),
    { numRuns: FILES },
  )
}, 600_000)

test('a process of its own ends with 0, 1 or 2 and leaves nothing behind on 2', async () => {
  const seed = Number(process.env.SCYE_SEED)
  const spoilt = fc.sample(spoiltFiles(texts.length), { numRuns: PROCESSES, seed })
  expect(await processFaults(spoilt.map((one) => spoiltText(texts, one)))).toEqual([])
}, 120_000)
