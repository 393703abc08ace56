export { EventSheet } from './event-sheet.tsx'
