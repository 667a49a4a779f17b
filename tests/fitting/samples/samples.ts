import { BODICE_SAMPLES } from './bodice.ts'
import type { Sample } from './sample.ts'
import { SEAM_SAMPLES } from './seams.ts'
import { SLEEVE_SAMPLES } from './sleeve.ts'

/** Samples of every correction by its name. A correction without one fails `every-correction.test.ts`. */
export const SAMPLES: Readonly<Record<string, readonly Sample[]>> = {
  ...SEAM_SAMPLES,
  ...SLEEVE_SAMPLES,
  ...BODICE_SAMPLES,
}
