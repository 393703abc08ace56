import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Flags that keep a browser quiet in a closed network, as root. */
export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** First Chromium or Chrome on PATH ($CHROMIUM wins); undefined lets Playwright look for its own. @returns {string | undefined} */
export function findChromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM
  for (const name of ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'])
    for (const dir of (process.env.PATH ?? '').split(delimiter)) {
      const file = join(dir, name)
      try {
        accessSync(file, constants.X_OK)
        return file
      } catch {
        // not in this folder
      }
    }
  return undefined
}

/** Launch options for Playwright. @param {string | undefined} executablePath */
export const launch = (executablePath = findChromium()) => ({
  args: chromiumArgs,
  ...(executablePath ? { executablePath } : {}),
})
