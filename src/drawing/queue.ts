/** Work that can be laid aside between two steps. Lower urgency numbers go first. */
export interface Job {
  ticket: number
  urgency: number
  steps: Generator<unknown, void, undefined>
}

/** Jobs in the order in which they came. */
export type Queue = Job[]

/** Takes a job out that nobody waits for any more. */
export const dropJob = (queue: Queue, ticket: number): void => {
  const at = queue.findIndex((job) => job.ticket === ticket)
  if (at >= 0) queue.splice(at, 1)
}

/**
 * Works on the most urgent job, the oldest of them, until it is done or the time is over.
 * A job that throws is given to `failed` and taken out.
 * @param now a clock, ms
 * @returns false when nothing is left to do
 */
export const workOn = (
  queue: Queue,
  slice_ms: number,
  now: () => number,
  failed: (ticket: number, why: unknown) => void,
): boolean => {
  const until = now() + slice_ms
  while (queue.length > 0) {
    let job = queue[0]!
    for (const other of queue) if (other.urgency < job.urgency) job = other
    try {
      do {
        if (job.steps.next().done) {
          dropJob(queue, job.ticket)
          break
        }
      } while (now() < until)
    } catch (why) {
      dropJob(queue, job.ticket)
      failed(job.ticket, why)
    }
    if (now() >= until) break
  }
  return queue.length > 0
}
