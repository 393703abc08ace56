export { VesselFromPhoto } from './from-photo.tsx'
