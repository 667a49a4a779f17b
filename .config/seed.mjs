// Every property of a run starts from the run's seed, so that the run can be repeated: SCYE_SEED=12345 npm test
import fc from 'fast-check'

const seed = Number(process.env.SCYE_SEED)
if (!Number.isInteger(seed)) throw new Error(`SCYE_SEED must be a whole number or random, not ${process.env.SCYE_SEED}`)
fc.configureGlobal({ seed })
