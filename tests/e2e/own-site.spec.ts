import { promise } from '../promise.ts'
import { expect, test } from './helpers.ts'
import { openSample } from './sheet.ts'

// Every other test holds it too, by the watching in helpers.ts; here the promise is said, and that the page could not if it would.
test('nothing is asked of any other site, and the page may not', async ({ page, watched, baseURL }) => {
  const origin = new URL(baseURL ?? '').origin
  await openSample(page, 'Orchard supper')
  await page.getByRole('button', { name: '2 Palettes' }).click()
  await expect(page.getByRole('button', { name: 'Put on the sheet' }).first()).toBeVisible()
  await page.getByRole('button', { name: '3 Picture' }).click()
  const waiting = page.waitForEvent('download', { timeout: 120_000 })
  await page.getByRole('button', { name: 'Download the picture' }).click()
  await waiting
  expect(watched.requests.length).toBeGreaterThan(10)
  expect(watched.requests.filter((url) => new URL(url).origin !== origin)).toEqual([])
  expect(watched.errors).toEqual([])

  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
  expect(policy).toContain("default-src 'none'")
  expect(policy).toContain("connect-src 'self'")
  expect(policy).not.toMatch(/unsafe-eval|\*|https?:/)
  const refused = await page.evaluate(
    () =>
      new Promise((resolve) => {
        document.addEventListener('securitypolicyviolation', (e) => resolve(e.effectiveDirective), { once: true })
        fetch('https://example.org/').then(
          () => resolve('it went through'),
          () => undefined,
        )
      }),
  )
  expect(refused).toBe('connect-src')
  // Those two lines of the console are what was asked for.
  watched.errors.splice(0, 2)
  watched.requests = watched.requests.filter((url) => !url.startsWith('https://example.org'))
  promise(`no request leaves the site: ${watched.requests.length} requests in a job, 0 elsewhere; policy in force`)
})
