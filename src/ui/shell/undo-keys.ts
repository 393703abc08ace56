import { redo, undo } from '../../state/index.ts'

interface Steps {
  undo: () => void
  redo: () => void
}

const OF_DESIGN: Steps = { undo, redo }
let now = OF_DESIGN

/** What Ctrl+Z takes back on the sheet that is open. */
export const stepsNow = (): Steps => now

/** A sheet with a history of its own says so while it is open. @returns what ends it */
export const ownSteps = (steps: Steps): (() => void) => {
  now = steps
  return () => {
    if (now === steps) now = OF_DESIGN
  }
}
