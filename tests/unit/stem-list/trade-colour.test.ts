import { describe, expect, it } from 'vitest'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { nearestTrade, tradeColour } from '../../../src/stem-list/index.ts'

const rose = findPlant('rose')!
const hexOf = (name: string): string => rose.colours.find((c) => c.name === name)!.hex

describe('the word under which a colour is bought', () => {
  it('a peach rose is a peach rose, in the very shade and in one near by', () => {
    expect(tradeColour(rose, hexOf('peach'))).toBe('peach')
    expect(tradeColour(rose, '#edb898')).toBe('peach')
  })
  it('a blue rose has no word: the trade has none', () => {
    expect(tradeColour(rose, '#2040c0')).toBe(null)
    expect(nearestTrade(rose, '#2040c0')).toBe(null)
  })
  it('a pink is no bicolour, though the swatch of one is pink', () => {
    const two = rose.colours.find((c) => c.name === 'bicolour')!.hex
    const near = `${two.slice(0, 6)}${two[6] === '0' ? '1' : '0'}`
    expect(tradeColour(rose, near)).not.toBe('bicolour')
    expect(tradeColour(rose, two)).toBe('bicolour')
  })
  it('every plant is bought by the word of each of its own colours', () => {
    for (const plant of PLANTS)
      for (const { name, hex } of plant.colours) {
        const same = plant.colours.filter((c) => c.hex.toLowerCase() === hex.toLowerCase()).map((c) => c.name)
        expect([...same, name]).toContain(tradeColour(plant, hex))
      }
  })
})
