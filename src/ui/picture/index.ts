export { PictureSheet } from './picture-sheet.tsx'
