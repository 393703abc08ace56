export { answerAsks } from './painting.ts'
export type { Ask, Port, Reply } from './protocol.ts'
export { showFragmentOn } from './show.tsx'
