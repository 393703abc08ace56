export { Views } from './Views.tsx'
