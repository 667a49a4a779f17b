import { parentPort, workerData } from 'node:worker_threads'
import { castOne } from './cast-one.ts'
import type { CastSettings, CastTask } from './cast-work.ts'

const settings = workerData as CastSettings

parentPort?.on('message', async (task: CastTask) => {
  parentPort?.postMessage(await castOne(task, settings))
})
