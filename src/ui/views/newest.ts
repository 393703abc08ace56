/** Runs one job at a time; while one is under way only the newest waits. So a stream of wishes never starves the answer. */
export const newestOnly = <Job>(work: (job: Job) => Promise<void>): { push(job: Job): void; clear(): void } => {
  let busy = false
  let waiting: Job | null = null
  const run = async (job: Job): Promise<void> => {
    busy = true
    try {
      await work(job)
    } finally {
      busy = false
      const next = waiting
      waiting = null
      if (next !== null) void run(next)
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
