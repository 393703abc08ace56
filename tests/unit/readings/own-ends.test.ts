import { describe, expect, it } from 'vitest'
import { readEnds } from '../../../src/ui/readings/own-ends.ts'

const share = { per: 100, unit: '%', range: [0, 1] } as const
const times = { per: 1, unit: '×', range: [0, 100] } as const
const offset = { per: 100, unit: '%', range: [-1, 1] } as const

describe('what a person types for a band of their own', () => {
  it('is read in the unit that is shown', () => {
    expect(readEnds(['25', '60'], share)).toEqual({ ends: [0.25, 0.6] })
    expect(readEnds(['1,5', ' 2.25 '], times)).toEqual({ ends: [1.5, 2.25] })
    expect(readEnds(['−12', '12'], offset)).toEqual({ ends: [-0.12, 0.12] })
  })
  it('may have one end, or both in one place', () => {
    expect(readEnds(['', '60'], share)).toEqual({ ends: [null, 0.6] })
    expect(readEnds(['2', ' '], times)).toEqual({ ends: [2, null] })
    expect(readEnds(['0', '0'], share)).toEqual({ ends: [0, 0] })
  })
  it.each([
    ['', '', 'One of the two, at least.'],
    ['tall', '3', 'A number, or nothing where there is no end.'],
    ['60', '25', 'The least is more than the most.'],
    ['25', '101', 'From 0 to 100 %.'],
    ['-1', '', 'From 0 to 100 %.'],
    ['1e400', '', 'A number, or nothing where there is no end.'],
  ])('%j to %j: %s', (least, most, problem) => {
    expect(readEnds([least, most], share)).toEqual({ problem })
  })
})
