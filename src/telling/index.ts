export { cautionLine, flameLine } from './cautions.ts'
export { colourWords, counted, dateWords, listed, plainName, ROLE_ORDER, subtitle, vesselWord } from './words.ts'
