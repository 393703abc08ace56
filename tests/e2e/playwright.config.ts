import { defineConfig, devices } from '@playwright/test'
import { launch } from '../../.ci/chromium.mjs'

const PORT = 4174
/** A page that is served already, for quick rounds by hand: nothing is built then. */
const served = process.env.PEDICEL_URL

export default defineConfig({
  testDir: '.',
  outputDir: '../../node_modules/.test-results',
  workers: 1,
  retries: 0,
  reporter: [['list'], ['json']],
  timeout: 180_000,
  expect: { timeout: 20_000 },
  use: {
    ...devices['Desktop Chrome'],
    viewport: { width: 1440, height: 900 },
    baseURL: served ?? `http://127.0.0.1:${PORT}`,
    launchOptions: launch(),
    acceptDownloads: true,
  },
  ...(served
    ? {}
    : {
        webServer: {
          command: `npx vite build --logLevel warn && npx vite preview --host 127.0.0.1 --port ${PORT} --strictPort`,
          cwd: '../..',
          url: `http://127.0.0.1:${PORT}`,
          reuseExistingServer: false,
          timeout: 120_000,
        },
      }),
})
