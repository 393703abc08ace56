export * from './types.ts'
export type { Edit } from './edits.ts'
