// tsdown's command warns about Node 20 on every run; the function it calls does not, and Node 20 is what we promise.
import { build } from 'tsdown'

await build({ logLevel: process.argv.includes('--quiet') ? 'error' : 'info' })
