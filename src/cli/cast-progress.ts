import type { Terminal } from './terminal.ts'

interface Progress {
  readonly step: (name: string) => void
  readonly stop: () => void
}

const NONE: Progress = { step: () => undefined, stop: () => undefined }

/** A bar on stderr while files are drafted, where someone looks; it is gone when it stops. */
export async function castProgress(total: number, shown: boolean, terminal: Terminal): Promise<Progress> {
  if (!shown || !terminal.interactive) return NONE
  const { default: cliProgress } = await import('cli-progress')
  const format = '  {bar} {value} of {total}  {name}'
  const bar = new cliProgress.SingleBar(
    { format, clearOnComplete: true, hideCursor: true, barsize: 30, linewrap: false },
    terminal.styleErr.strong('x') === 'x' ? cliProgress.Presets.legacy : cliProgress.Presets.shades_classic,
  )
  bar.start(total, 0, { name: '' })
  return { step: (name) => bar.increment(1, { name }), stop: () => bar.stop() }
}
