import { plantIds } from '../catalogue/index.ts'
import { OWN_BANDS } from '../readings/index.ts'
import { browserStore, smallStore } from '../storage/index.ts'

/** What the catalogue knows, for whoever reads a file. */
export const known = { plants: new Set(plantIds), bands: OWN_BANDS }
/** What this browser keeps; for the rooms of state alone. */
export const store = browserStore({ known })
/** Where what is not written yet is put down when the page goes. */
export const lastWords = smallStore()
