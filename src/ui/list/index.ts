export { useListView } from './derived.ts'
export { NumberBox } from './number-box.tsx'
export { Plate } from './plate.tsx'
export { StemColumn } from './stem-column.tsx'
