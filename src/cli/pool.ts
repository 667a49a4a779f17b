import { Worker } from 'node:worker_threads'

export interface PoolOptions<Task, Row> {
  readonly tasks: readonly Task[]
  /** Module of the worker: answers every task posted to it with one row. */
  readonly module: URL
  /** Given to each worker when it starts. */
  readonly settings: unknown
  /** How many at a time. */
  readonly jobs: number
  /** The row of a task whose worker ended under it. */
  readonly crashed: (task: Task, error: unknown) => Row
  readonly done?: (row: Row) => void
}

/**
 * Hands the tasks out to a few workers, the next to whoever is free; rows come back in the order of the tasks. A worker
 * that ends under a task is replaced, and the task is not tried again.
 */
export async function pool<Task, Row>(options: PoolOptions<Task, Row>): Promise<Row[]> {
  const { tasks, module, settings, jobs, crashed, done } = options
  const rows: Row[] = new Array(tasks.length)
  let next = 0
  const oneAfterAnother = async () => {
    let worker: Worker | undefined
    while (next < tasks.length) {
      const at = next++
      const task = tasks[at] as Task
      worker ??= new Worker(module, { workerData: settings })
      try {
        rows[at] = (await answered(worker, task)) as Row
      } catch (error) {
        rows[at] = crashed(task, error)
        await worker.terminate()
        worker = undefined
      }
      done?.(rows[at] as Row)
    }
    await worker?.terminate()
  }
  await Promise.all(Array.from({ length: Math.min(jobs, tasks.length) }, oneAfterAnother))
  return rows
}

function answered(worker: Worker, task: unknown): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const ended = (code: number) => settle(() => reject(new Error(`the worker ended with status ${code}`)))
    const failed = (error: unknown) => settle(() => reject(error))
    const done = (row: unknown) => settle(() => resolve(row))
    // Node listens too, to know of an end that was asked for: only these are taken away.
    const settle = (end: () => void) => {
      worker.off('message', done).off('error', failed).off('exit', ended)
      end()
    }
    worker.on('message', done).on('error', failed).on('exit', ended)
    worker.postMessage(task)
  })
}
