import { dropJob, type Job, type Queue, workOn } from './queue.ts'

/** After so long a newer message is looked for, ms. Ours: under half of a frame. */
const SLICE_MS = 8

/** Works on jobs in slices and lets the messages that wait have their turn in between. */
export interface Desk {
  take(job: Job): void
  /** Nobody waits for it any more. */
  drop(ticket: number): void
}

/** @param failed hears of a job that threw, in words */
export const createDesk = (failed: (ticket: number, why: string) => void): Desk => {
  const queue: Queue = []
  const inWords = (ticket: number, why: unknown): void =>
    failed(ticket, why instanceof Error ? why.message : String(why))
  // A message to oneself comes after the messages that wait already, and without the delay of a timer.
  const channel = new MessageChannel()
  let running = false
  channel.port1.onmessage = () => {
    running = workOn(queue, SLICE_MS, () => performance.now(), inWords)
    if (running) channel.port2.postMessage(null)
  }
  const go = (): void => {
    if (running || queue.length === 0) return
    running = true
    channel.port2.postMessage(null)
  }
  return {
    take: (job) => {
      queue.push(job)
      go()
    },
    drop: (ticket) => {
      dropJob(queue, ticket)
      go()
    },
  }
}
