export { download } from './download.ts'
export { FileActs, readFile } from './file-acts.tsx'
export { OpeningDialog } from './opening-dialog.tsx'
