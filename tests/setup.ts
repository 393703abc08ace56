import { configureGlobal } from 'fast-check'

/** Properties run a hundred times on each change, and two thousand times in the long run. */
configureGlobal({ numRuns: process.env.SOAK ? 2000 : 100 })
