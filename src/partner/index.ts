export { drawMark } from './draw-mark.ts'
export { answerAsks } from './painting.ts'
export type { Ask, Port, Reply } from './protocol.ts'
export { showFragmentOn } from './show.tsx'
