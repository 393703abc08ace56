export { useListView } from './derived.ts'
export { Plate } from './plate.tsx'
export { StemColumn } from './stem-column.tsx'
