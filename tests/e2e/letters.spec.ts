import { expect, test } from './helpers.ts'
import { openSample } from './sheet.ts'

/** Signs of a drawing that a system may not have: they are in the house's own letters. */
const SIGNS = '⌀×°±−–…½¼¾⅛⅜⅝⅞←→↑↓≈≤≥€£'

test('every sign of the drawing is in the page’s own letters', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  const missing = await page.evaluate(async (signs) => {
    const pen = document.createElement('canvas').getContext('2d')!
    /** The pixels of a sign as it is written in these faces. */
    const written = (faces: string, sign: string): string => {
      pen.canvas.width = 60
      pen.canvas.height = 60
      pen.font = `500 40px ${faces}`
      pen.fillText(sign, 5, 45)
      return pen.canvas.toDataURL()
    }
    const out: string[] = []
    for (const sign of signs) {
      await document.fonts.load('500 40px "Ysabeau Office"', sign)
      // Taken from the system it would look as it does without our face, in one of these at least.
      const own = ['serif', 'sans-serif', 'monospace'].map((system) => written(`"Ysabeau Office", ${system}`, sign))
      const system = ['serif', 'sans-serif', 'monospace'].map((face) => written(face, sign))
      if (new Set(own).size > 1 || system.includes(own[0]!)) out.push(sign)
    }
    return out
  }, SIGNS)
  expect(missing).toEqual([])
})
