export { download } from './download.ts'
export { FileActs, readFile } from './file-acts.tsx'
