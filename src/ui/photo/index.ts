export { PhotoTaker } from './photo-taker.tsx'
export { hasPicture, pictureIn } from './picture-in.ts'
