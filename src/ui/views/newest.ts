/**
 * How often what is in the hand is drawn afresh, ms: between two drawings the last one is moved along. A still picture is
 * taken in at a glance of about this length. Ours.
 */
export const FRESH_MS = 50

/**
 * Runs one job at a time; while one is under way only the newest waits. So a stream of wishes never starves the answer.
 * @param apart least time from the beginning of one job to that of the next, ms; what comes sooner waits, so that a
 *   stream of wishes leaves the machine to the hand
 */
export const newestOnly = <Job>(
  work: (job: Job) => Promise<void>,
  apart = 0,
): { push(job: Job): void; clear(): void } => {
  let busy = false
  let waiting: Job | null = null
  const next = (): void => {
    busy = false
    const job = waiting
    waiting = null
    if (job !== null) void run(job)
  }
  const run = async (job: Job): Promise<void> => {
    busy = true
    const begun = performance.now()
    try {
      await work(job)
    } finally {
      const rest = apart - (performance.now() - begun)
      if (rest > 0) setTimeout(next, rest)
      else next()
    }
  }
  return {
    push: (job) => {
      if (busy) waiting = job
      else void run(job)
    },
    clear: () => {
      waiting = null
    },
  }
}
