import { loadPart } from './load-part.ts'

loadPart('cast-worker.cjs')
