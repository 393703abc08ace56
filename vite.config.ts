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
  build: { target: 'es2023' },
  worker: { format: 'es' },
  test: {
    testTimeout: 60_000,
    environment: 'node',
    include: ['tests/unit/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
  },
})
