import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contrastRatio as contrast } from '../../../src/colour/index.ts'
import { CAPTION, LETTERING, TOKENS } from '../../../src/ui/theme/tokens.ts'

const UI = join(import.meta.dirname, '../../../src/ui')
const css = readFileSync(join(UI, 'theme/tokens.css'), 'utf8').replaceAll('"', "'")

describe('the colours of the sheet', () => {
  it('stand in the style sheet as in the code', () => {
    const inCss = Object.fromEntries([...css.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{6});/g)].map((m) => [m[1], m[2]]))
    expect(inCss).toEqual(TOKENS)
    expect(css).toContain(`--lett: ${LETTERING};`)
    expect(css).toContain(`--capt: ${CAPTION};`)
  })

  it('contrast is reckoned as WCAG does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
    // #767676 on white is the well-known grey that just passes 4.5.
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
  })

  it.each([
    ['ink', 'paper'],
    ['ink2', 'paper'],
    ['accent', 'paper'],
    ['ink', 'paper-light'],
    ['ink2', 'paper-light'],
    ['accent', 'paper-light'],
    ['ink', 'white'],
    ['white', 'accent'],
    ['white', 'ink'],
    ['paper', 'accent'],
  ] as const)('text in %s can be read on %s', (text, ground) => {
    expect(contrast(TOKENS[text], TOKENS[ground])).toBeGreaterThanOrEqual(4.5)
  })

  it.each([
    ['line', 'paper'],
    ['line', 'paper-light'],
    ['line', 'white'],
    ['accent', 'paper'],
    ['core', 'halo'],
  ] as const)('a line in %s is seen on %s', (line, ground) => {
    expect(contrast(TOKENS[line], TOKENS[ground])).toBeGreaterThanOrEqual(3)
  })

  it('a two-tone mark stands out from whatever lies under it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const ground = `#${n.toString(16).padStart(6, '0')}`
        return Math.max(contrast(TOKENS.core, ground), contrast(TOKENS.halo, ground)) >= 3
      }),
    )
  })

  it('the greys have no tint', () => {
    for (const name of ['paper', 'paper-light', 'ink', 'ink2', 'line', 'faint'] as const) {
      const hex = TOKENS[name]
      expect(new Set([hex.slice(1, 3), hex.slice(3, 5), hex.slice(5, 7)]).size).toBe(1)
    }
  })
})

describe('the lettering', () => {
  const files = readdirSync(join(UI, 'fonts'))

  it('is light enough to be there at once', () => {
    const first = files.filter((f) => /roman\.woff2$/.test(f)).map((f) => statSync(join(UI, 'fonts', f)).size)
    expect(first).toHaveLength(2)
    expect(first.reduce((a, b) => a + b, 0)).toBeLessThan(120_000)
  })

  it('carries its licence', () => {
    for (const f of files.filter((f) => f.endsWith('LICENSE.txt')))
      expect(readFileSync(join(UI, 'fonts', f), 'utf8')).toContain('SIL Open Font License, Version 1.1')
    expect(files.filter((f) => f.endsWith('LICENSE.txt'))).toHaveLength(2)
  })
})
