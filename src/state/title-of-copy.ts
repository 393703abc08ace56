import { LIMITS } from '../arrangement/index.ts'

const BESIDE = ' (copy)'

/** What a copy beside something is called, no longer than a title may be. @param none for what has no title */
export const titleOfCopy = (title: string, none = ''): string =>
  `${[...(title || none)].slice(0, LIMITS.text - BESIDE.length).join('')}${BESIDE}`.trimStart()
