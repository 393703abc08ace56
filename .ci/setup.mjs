// Makes a fresh clone ready: the locked packages, and with --browser a Chromium for the tests.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { findChromium } from './chromium.mjs'

const quiet = process.argv.includes('--quiet')

/** @param {string} cmd @param {string[]} args */
const run = (cmd, args) => {
  if (!quiet) console.log(`setup: ${cmd} ${args.join(' ')}`)
  return (
    spawnSync(cmd, args, {
      // With --quiet, standard output belongs to the command that follows.
      stdio: quiet ? ['ignore', 2, 'inherit'] : 'inherit',
      shell: process.platform === 'win32',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0
  )
}

process.chdir(fileURLToPath(new URL('..', import.meta.url)))
const lock = createHash('sha256').update(readFileSync('package-lock.json')).digest('hex')
const stamp = 'node_modules/.setup-stamp'
if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== lock) {
  if (!run('npm', ['ci', '--no-audit', '--no-fund'])) process.exit(1)
  writeFileSync(stamp, lock)
}

if (process.argv.includes('--browser') && !findChromium()) {
  const debianRoot = existsSync('/etc/debian_version') && process.getuid?.() === 0
  const ok = debianRoot
    ? run('apt-get', ['update', '-qq']) &&
      run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'])
    : run('npx', ['playwright', 'install', 'chromium'])
  if (!ok) {
    console.error('setup: no Chromium found; install one or set CHROMIUM to its path')
    process.exit(1)
  }
}
