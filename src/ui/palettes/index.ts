export { PalettesSheet } from './palettes-sheet.tsx'
