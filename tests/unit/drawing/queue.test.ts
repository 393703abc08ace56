import { describe, expect, it } from 'vitest'
import { dropJob, type Queue, workOn } from '../../../src/drawing/index.ts'

const job = (ticket: number, urgency: number, steps: number, done: string[]) => ({
  ticket,
  urgency,
  steps: (function* () {
    for (let i = 0; i < steps; i++) yield
    done.push(`${ticket}`)
  })(),
})
/** A clock that goes on by 1 ms whenever it is looked at. */
const ticking = () => {
  let t = 0
  return () => t++
}
const never = (_: number, why: unknown): void => {
  throw why
}

describe('the order of work', () => {
  it('a moving stem goes before a still that came first', () => {
    const done: string[] = []
    const queue: Queue = [job(1, 1, 40, done)]
    const now = ticking()
    expect(workOn(queue, 8, now, never)).toBe(true)
    queue.push(job(2, 0, 2, done))
    while (workOn(queue, 8, now, never));
    expect(done).toEqual(['2', '1'])
  })

  it('what is dropped is never finished', () => {
    const done: string[] = []
    const queue: Queue = [job(1, 1, 5, done), job(2, 1, 5, done)]
    dropJob(queue, 1)
    while (workOn(queue, 3, ticking(), never));
    expect(done).toEqual(['2'])
  })

  it('a job that fails is told and does not stop the others', () => {
    const done: string[] = []
    const told: string[] = []
    const broken = {
      ticket: 9,
      urgency: 0,
      // biome-ignore lint/correctness/useYield: it fails before its first step
      steps: (function* (): Generator<unknown, void, undefined> {
        throw new Error('no such plant')
      })(),
    }
    const queue: Queue = [broken, job(1, 1, 1, done)]
    while (workOn(queue, 50, ticking(), (ticket, why) => told.push(`${ticket}: ${(why as Error).message}`)));
    expect(told).toEqual(['9: no such plant'])
    expect(done).toEqual(['1'])
  })
})
