import react from '@vitejs/plugin-react'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'
import { partnerPage } from './.ci/partner-page.ts'

/** While developing, vite itself puts scripts into the page that its policy forbids; the built page keeps the policy. */
const withoutPolicy: Plugin = {
  name: 'pedicel-without-policy',
  apply: 'serve',
  transformIndexHtml: (html, { server }) =>
    server ? html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, '') : html,
}

export default defineConfig({
  plugins: [react(), withoutPolicy, partnerPage()],
  base: './',
  build: {
    target: 'es2023',
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          // The tool paints in a worker; only the partner's page and the picture paint in the page itself. Left together with what all
          // of them use, the painters would be fetched before the first drawing.
          groups: [
            {
              name: 'painting',
              test: /src\/(drawing\/(?!room\/|parts|reach|types|tip|contour)|geometry\/(build-mesh|habits\/(heads|lines|mesh)))/,
            },
            { name: 'room-view', test: /src\/drawing\/room\// },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
  test: {
    testTimeout: 60_000,
    environment: 'node',
    include: ['tests/unit/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
  },
})
