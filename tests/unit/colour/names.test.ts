import { describe, expect, it } from 'vitest'
import { loadColourNames } from '../../../src/colour/index.ts'
import { ISCC_NBS } from '../../../src/colour/iscc-nbs.ts'

const { colourName } = await loadColourNames()

describe('the name of a colour', () => {
  it.each([
    ['#e8a0b4', 'moderate purplish pink'],
    ['#fff8e7', 'yellowish white'],
    ['#6b1f33', 'very deep red'],
    ['#f2a007', 'vivid orange yellow'],
    ['#4c63b6', 'strong purplish blue'],
    ['#4f6b3a', 'deep yellow green'],
    ['#ffd2b3', 'pale yellowish pink'],
    ['#b9a7d6', 'light purple'],
    ['#d81b74', 'vivid purplish red'],
    ['#ffffff', 'white'],
    ['#000000', 'black'],
    ['#D81B74', 'vivid purplish red'],
  ])('%s is %s', (hex, name) => {
    expect(colourName(hex)).toBe(name)
  })

  it('comes from 267 rows of plain lower-case words, each the name of its own colour', () => {
    const rows = ISCC_NBS.trim().split('\n')
    expect(rows).toHaveLength(267)
    expect(new Set(rows.map((r) => r.slice(7))).size).toBe(267)
    for (const row of rows) {
      expect(row).toMatch(/^[0-9a-f]{6} [a-z][a-z -]+$/)
      expect(colourName(`#${row.slice(0, 6)}`)).toBe(row.slice(7))
    }
  })
})
