export { HAND_MINUTES, newEvent } from './defaults.ts'
export { type EventRead, readEvent, writeEvent } from './read.ts'
export { isClock } from './schema.ts'
export * from './types.ts'
