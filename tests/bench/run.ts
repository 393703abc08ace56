/**
 * `npm run bench`: every benchmark of this folder, Node first, then Chromium; one JSON object a line. With --smoke each
 * runs a few rounds only, to see that it runs. What a figure means is in the file that prints it.
 */
import { spawnSync } from 'node:child_process'
import { cpus } from 'node:os'

const smoke = process.argv.includes('--smoke')
const files = ['readings.ts', 'event.ts', 'drawing.ts', 'page.ts']

console.error(
  `machine: ${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}${smoke ? ', smoke run' : ''}`,
)
let status = 0
for (const file of files) {
  const run = spawnSync('npx', ['tsx', new URL(file, import.meta.url).pathname, ...(smoke ? ['--smoke'] : [])], {
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  if (run.status !== 0) status = 1
}
process.exit(status)
