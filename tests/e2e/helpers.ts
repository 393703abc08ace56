import { test as base, type CDPSession, expect, type Locator, type Page } from '@playwright/test'
import { drag } from './sheet.ts'

/** What a page did that it must not, and what it asked for. */
export interface Watched {
  /** Every request over the network, workers' included. */
  requests: string[]
  /** Errors of the page and its workers, and what the console calls an error. */
  errors: string[]
}

/**
 * Every test is watched: whatever a person does, nothing is asked of another site and nothing goes wrong in silence.
 * A test that expects an error takes it out of `watched.errors`.
 */
export const test = base.extend<{ watched: Watched }>({
  watched: [
    async ({ context, baseURL }, use) => {
      const watched: Watched = { requests: [], errors: [] }
      context.on('request', (r) => {
        if (/^(https?|wss?):/.test(r.url())) watched.requests.push(r.url())
      })
      context.on('weberror', (e) => watched.errors.push(e.error().message))
      context.on('console', (m) => m.type() === 'error' && watched.errors.push(m.text()))
      await use(watched)
      const origin = new URL(baseURL ?? '').origin
      expect(watched.requests.filter((url) => new URL(url).origin !== origin)).toEqual([])
      expect(watched.errors).toEqual([])
    },
    { auto: true },
  ],
})
export { expect }

export const undoButton = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ })
export const redoButton = (page: Page): Locator => page.getByRole('button', { name: /^Redo/ })

/** Presses a button until it says that it can't be pressed any more. @returns how often */
export const pressOut = async (button: Locator): Promise<number> => {
  for (let n = 0; n < 200; n++) {
    if ((await button.getAttribute('aria-disabled')) === 'true') return n
    await button.click()
  }
  throw new Error('there is no end to it')
}

/** After a command by key, the keyboard still stands on something. */
export const focusIsSomewhere = async (page: Page): Promise<void> =>
  expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).not.toBe('BODY')

/** Goes on by Tab until the thing has the focus; never touches the mouse. */
export const tabToIt = async (page: Page, target: Locator): Promise<void> => {
  await expect(target).toBeVisible()
  // Whichever way is likely the shorter one.
  const back = await target.evaluate((e) => {
    const from = document.activeElement ?? document.body
    return from !== document.body && (from.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_PRECEDING) !== 0
  })
  for (let i = 0; i < 300; i++) {
    if (await target.evaluate((e) => e === document.activeElement)) return
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab')
  }
  throw new Error(`no way by Tab to ${target}`)
}
export const tabTo = (page: Page, role: Parameters<Page['getByRole']>[0], name: string | RegExp): Promise<void> =>
  tabToIt(page, page.getByRole(role, { name }).first())

/** By keys alone: to a number field, its whole content replaced, taken by Enter. */
export const typeInto = async (page: Page, name: string | RegExp, value: number | string): Promise<void> => {
  await tabTo(page, 'spinbutton', name)
  await page.keyboard.press('Control+a')
  await page.keyboard.type(String(value))
  await page.keyboard.press('Enter')
  await focusIsSomewhere(page)
}

/** Draws a box with the pointer round all that stands in the elevation. */
export const boxAll = async (page: Page): Promise<void> => {
  const { x, y, width, height } = (await page.getByTestId('elevation').boundingBox())!
  await drag(page, { x: x + 4, y: y + 4 }, { x: width - 8, y: height - 8 })
}

/** Fingers, as the browser gets them from a screen. */
export const fingers = async (page: Page) => {
  const session: CDPSession = await page.context().newCDPSession(page)
  return (type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', ...points: { x: number; y: number }[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map((p, id) => ({ ...p, id })) })
}

/** Writes down every text that is drawn on a canvas, newest last; before the page is opened. */
export const hearCanvas = async (page: Page): Promise<() => Promise<string[]>> => {
  await page.addInitScript(() => {
    const said: string[] = []
    Object.assign(window, { said })
    const draw = CanvasRenderingContext2D.prototype.fillText
    CanvasRenderingContext2D.prototype.fillText = function (this: CanvasRenderingContext2D, text, ...rest) {
      said.push(String(text))
      return draw.call(this, text, ...rest)
    }
  })
  return () => page.evaluate(() => (window as unknown as { said: string[] }).said)
}
