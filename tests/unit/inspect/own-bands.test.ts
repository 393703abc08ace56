import { describe, expect, it } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { plantIds } from '../../../src/catalogue/index.ts'
import { inspectFile } from '../../../src/inspect/index.ts'

const stem = { id: 's1', plant: [...plantIds][0], role: 'focal', mouth: [0, 0], tip: [0, 0, 200] }
const inspected = (bands?: unknown) => {
  const text = JSON.stringify({ ...newArrangement(), form: 'airy', stems: [stem], ...(bands ? { bands } : {}) })
  return inspectFile({ file: 'a.json', text }, null)
}

describe('a teacher with a folder of sketches', () => {
  it('sees whose bands a design was held against, and what that does to its score', () => {
    const plain = inspected()
    const own = inspected({ 'proportion.heightRatio': [40, null] })
    if (!('readings' in plain) || !('readings' in own)) throw new Error('refused')
    expect(plain.ownBands).toBeUndefined()
    expect(own.ownBands).toEqual({ 'proportion.heightRatio': [40, null] })
    expect(own.readings.proportion!.score!).toBeLessThan(plain.readings.proportion!.score!)
    expect(own.readings.proportion!.values).toEqual(plain.readings.proportion!.values)
    expect(own.readings.proportion!.advice[0]!.text).toMatch(/wanted at least 40 ×, your own/)
  })
  it('is told of a band that there is not, or that can’t be', () => {
    expect(inspected({ 'proportion.girth': [1, 2] })).toMatchObject({
      error: expect.stringMatching(/^bands\["proportion\.girth"\]: expected one of proportion\.heightRatio, /),
    })
    expect(inspected({ 'stability.tippingAngle_deg': [20, 120] })).toMatchObject({
      error: expect.stringMatching(/^bands\["stability\.tippingAngle_deg"\]: .* from 0 to 90 .*, got \[20, 120\]$/),
    })
  })
})
