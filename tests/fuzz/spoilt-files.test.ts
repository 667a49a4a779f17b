import fc from 'fast-check'
import { expect, test } from 'vitest'
import { judgeFile } from './judge-file.ts'
import { soundFiles } from './sound-files.ts'
import { spoiltFiles, spoiltText } from './spoil-file.ts'

const FILES = 1000
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
