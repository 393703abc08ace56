/** `npm run soak`: the seeded fault and fuzz runs at ten times the length and more, at most 20 minutes; a line a promise. */
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const promises = join(tmpdir(), `pedicel-soak-${process.pid}.txt`)
const run = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/unit/state', 'tests/unit/arrangement', 'tests/unit/storage', '--testTimeout=1200000'],
  {
    stdio: 'inherit',
    timeout: 20 * 60_000,
    env: { ...process.env, SOAK: '1', PROMISES: promises },
  },
)
if (existsSync(promises)) process.stdout.write(readFileSync(promises, 'utf8'))
rmSync(promises, { force: true })
process.exit(run.status ?? 1)
