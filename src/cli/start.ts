import { setFlagsFromString } from 'node:v8'
import { loadPart } from './load-part.ts'
import type { run as Run } from './run.ts'

export { keepCompiled, loadPart } from './load-part.ts'

// Most runs end before optimised code has repaid its making: functions must have run ten times as long as usual for it.
setFlagsFromString('--interrupt-budget=600000')

export const { run } = loadPart('run.cjs') as { readonly run: typeof Run }
