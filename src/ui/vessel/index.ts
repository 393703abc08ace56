export { VesselDialog } from './vessel-dialog.tsx'
export { VesselDrawing } from './vessel-drawing.tsx'
