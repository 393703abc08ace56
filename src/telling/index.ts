export { cautionLine, cautionLines, flameLine } from './cautions.ts'
export { colourWords, counted, dateWords, listed, plainName, ROLE_ORDER, subtitle, vesselWord } from './words.ts'
