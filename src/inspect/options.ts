import { LIMITS } from '../arrangement/index.ts'

export const USAGE =
  'Usage: npm run -s inspect -- FILE… [--copies N]   (designs and events; a folder stands for every .json file in it)'

export type Options = { files: string[]; copies: number | null } | { wrong: string }

const WRONG_COPIES = `--copies takes a whole number from 1 to ${LIMITS.copies}`

/** Reads the words after the command. `--` ends the options, so that a file may be called `--copies`. */
export const readOptions = (words: readonly string[]): Options => {
  const files: string[] = []
  let copies: number | null = null
  for (let i = 0; i < words.length; i += 1) {
    const word = words[i]!
    if (word === '--') {
      files.push(...words.slice(i + 1))
      break
    }
    const [name, inline] = word.startsWith('--copies=')
      ? ['--copies', word.slice('--copies='.length)]
      : [word, undefined]
    if (name === '--copies') {
      if (inline === undefined) i += 1
      const given = inline ?? words[i]
      if (given === undefined || !/^\d{1,6}$/.test(given))
        return { wrong: `${WRONG_COPIES}, got ${given === undefined ? 'nothing' : JSON.stringify(given)}` }
      copies = Number(given)
      if (copies < 1 || copies > LIMITS.copies) return { wrong: `${WRONG_COPIES}, got ${given}` }
    } else if (word.startsWith('-') && word !== '-') return { wrong: `There is no option ${word}\n${USAGE}` }
    else files.push(word)
  }
  return files.length > 0 ? { files, copies } : { wrong: USAGE }
}
