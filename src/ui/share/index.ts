export { AnswerDialog } from './answer-dialog.tsx'
export { openAnswerLink } from './open-answer.ts'
export { SharePanel } from './share-panel.tsx'
