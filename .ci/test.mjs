// `npm test`: types, lint, unit and property tests, browser tests; one line a promise; last line `N passed, N failed`.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const unitReport = join(tmpdir(), `pedicel-unit-${process.pid}.json`)
const browserReport = join(tmpdir(), `pedicel-browser-${process.pid}.json`)
const promises = join(tmpdir(), `pedicel-promises-${process.pid}.txt`)

let passed = 0
let failed = 0

/** @param {string} title @param {string[]} args @param {Record<string, string>} [env] */
const run = (title, args, env = {}) => {
  console.log(`\n== ${title}`)
  return spawnSync('npx', args, { stdio: 'inherit', env: { ...process.env, PROMISES: promises, ...env } }).status === 0
}

/** @param {string} title @param {boolean} ok */
const count = (title, ok) => {
  if (ok) passed += 1
  else failed += 1
  console.log(`${ok ? 'ok' : 'FAILED'}: ${title}`)
}

count('types', run('types', ['tsc', '--noEmit']))
count('lint', run('lint', ['biome', 'check', '--error-on-warnings', '.']))

const unitOk = run('unit, reference and property tests', [
  'vitest',
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${unitReport}`,
])
if (existsSync(unitReport)) {
  const report = JSON.parse(readFileSync(unitReport, 'utf8'))
  passed += report.numPassedTests
  // A file that fails to load has no failed test of its own.
  failed += Math.max(report.numFailedTests, unitOk ? 0 : 1)
} else count('unit tests ran', false)

const browserOk = run('browser tests', ['playwright', 'test', '--config', 'tests/e2e/playwright.config.ts'], {
  PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport,
})
if (existsSync(browserReport)) {
  const { stats } = JSON.parse(readFileSync(browserReport, 'utf8'))
  passed += stats.expected
  failed += Math.max(stats.unexpected + stats.flaky, browserOk ? 0 : 1)
} else count('browser tests ran', false)

console.log('\n== promises')
if (existsSync(promises)) process.stdout.write(readFileSync(promises, 'utf8'))
for (const file of [unitReport, browserReport, promises]) rmSync(file, { force: true })
console.log(`\n${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)
