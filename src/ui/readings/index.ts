export { ReadingsColumn } from './readings-column.tsx'
