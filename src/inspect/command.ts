import { filesOf } from './files.ts'
import { inspectFile } from './inspect.ts'
import { readOptions } from './options.ts'

/** `npm run -s inspect -- FILE… [--copies N]`: one JSON object a line for each design file; see DEVELOPERS.md. */
// Whoever reads the lines may stop early (`| head`): that is no error.
process.stdout.on('error', (e: NodeJS.ErrnoException) => {
  if (e.code !== 'EPIPE') throw e
  process.exit()
})

const options = readOptions(process.argv.slice(2))
if ('wrong' in options) {
  process.stderr.write(`${options.wrong}\n`)
  process.exitCode = 2
} else {
  for (const path of options.files)
    for (const file of filesOf(path)) {
      const line = inspectFile(file, options.copies)
      if ('error' in line) process.exitCode = 1
      process.stdout.write(`${JSON.stringify(line)}\n`)
    }
}
