export * from './actions.ts'
export {
  agreeToOpen,
  askFor,
  backToDrawing,
  beginDesign,
  goToStart,
  openKept,
  openSample,
  openText,
  readSample,
  removeKept,
  SAMPLES,
  textOfDesign,
} from './design-opening.ts'
export {
  addPart,
  changeCurrency,
  changeEvent,
  changePart,
  changePrices,
  redoEvent,
  removePart,
  tick,
  undoEvent,
} from './event-actions.ts'
export { fetchDesigns } from './event-designs.ts'
export {
  agreeToOpenEvent,
  dropOpeningEvent,
  openEventText,
  openTwinAsCopy,
  putTwinInPlace,
  textOfEvent,
} from './event-files.ts'
export { beginEvent, goOnWithCopy, openEvent, refreshEvents, showNewer, startEvent } from './event-keeping.ts'
export { keepEvent } from './event-saver.ts'
export { type EventState, type KeptEvent, useEvent, useEventHistory } from './event-store.ts'
export { putEventBack, rawEvent, removeEvent, throwEventAway } from './event-thrown.ts'
export {
  type KeptDesign,
  refreshKept,
  startKeeping,
  useHousePalettes,
  useKeptDesigns,
} from './keeping.ts'
export { benchFor, type PhotoBench } from './outline.ts'
export { keepPalette, removePalette, useOwnPalettes } from './own-palettes.ts'
export { type PaintedPicture, type Painter, startPainting } from './painter.ts'
export { dressed, type NamedPalette, type NamedSlot, paletteOf } from './palettes.ts'
export { type PhotoRead, readPhoto } from './photo.ts'
export { type PhotoPart, partsOfPhoto } from './photo-parts.ts'
export { type PngMaker, pngMaker } from './png.ts'
export { readApart, startReading } from './reader.ts'
export type { SeenColours } from './readings.worker.ts'
export { resetStudio, shownOf, UNDO_LIMIT, useHistory, useShown, useStudio } from './store.ts'
export type * from './types.ts'
