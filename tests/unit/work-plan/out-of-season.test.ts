import { describe, expect, it } from 'vitest'
import type { EventPlan } from '../../../src/event/index.ts'
import { line, plan } from './made.ts'

const said = (over: Partial<EventPlan>, ...plants: string[]) =>
  plan(over, ...plants.map((id) => line(id, 24))).clashes.filter((c) => / season |not usual/.test(c.text))

describe('what is out of season on the day', () => {
  it('peonies for October are told of where they are ordered, with the months, the source and what to do', () => {
    expect(said({ date: '2027-10-09T15:00' }, 'rose', 'peony')).toEqual([
      {
        tasks: ['book'],
        text: 'peony is out of season in October; to be had November–August, most of it April–June. Ask your seller early, or swap it.',
        known: expect.stringMatching(/^Florists' Review.*California Cut Flower Commission/),
      },
    ])
  })
  it('in June nothing is said of them, nor of a flower whose months are from memory or not known', () => {
    expect(said({ date: '2027-06-12T15:00' }, 'peony')).toEqual([])
    expect(said({ date: '2027-08-14T15:00' }, 'ranunculus', 'dusty-miller')).toEqual([])
  })
  it('in the south the months are half a year later', () => {
    const zone = 'Australia/Melbourne'
    expect(said({ zone, date: '2027-11-13T15:00' }, 'peony')).toEqual([])
    expect(said({ zone, date: '2027-04-10T15:00' }, 'peony')[0]!.known).toContain('ours')
    expect(said({ zone, seasons: 'north', date: '2027-04-10T15:00' }, 'peony')).toEqual([])
  })
})
