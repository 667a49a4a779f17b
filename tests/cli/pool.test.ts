import { expect, test } from 'vitest'
import { pool } from '../../src/cli/pool.ts'

/** A worker that doubles numbers and dies in two ways. */
const SCRIPT = `import { parentPort, workerData } from 'node:worker_threads'
parentPort.on('message', (n) => {
  if (n === 3) process.exit(7)
  if (n === 5) throw new Error('five')
  parentPort.postMessage(n * workerData)
})`
const module = new URL(`data:text/javascript,${encodeURIComponent(SCRIPT)}`)

test.each([1, 3])('a worker that ends under a task costs that task alone, %i at a time', async (jobs) => {
  const done: unknown[] = []
  const rows = await pool<number, unknown>({
    tasks: [1, 2, 3, 4, 5, 7, 8],
    module,
    settings: 10,
    jobs,
    crashed: (task, error) => `${task}: ${(error as Error).message}`,
    done: (row) => done.push(row),
  })
  expect(rows).toEqual([10, 20, '3: the worker ended with status 7', 40, '5: five', 70, 80])
  expect(done).toHaveLength(7)
})

test('no tasks, no rows', async () => {
  expect(await pool({ tasks: [], module, settings: 1, jobs: 2, crashed: () => 0 })).toEqual([])
})
