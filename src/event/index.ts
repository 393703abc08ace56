export { HAND_MINUTES, newEvent } from './defaults.ts'
export { type EventRead, eventFaults, readEvent, writeEvent } from './read.ts'
export { EVENT_LIMITS, isClock, isZone } from './schema.ts'
export * from './types.ts'
