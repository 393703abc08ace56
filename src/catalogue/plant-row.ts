import type { Role } from '../arrangement/index.ts'
import { type CareRow, careOf } from './care.ts'
import colourWords from './colours.json' with { type: 'json' }
import { cite } from './sources.ts'
import type { Figure, FormClass, Habit, Plant } from './types.ts'

/** Working value, least, most, codes of sources (sources.ts). */
export type FigureRow = [number, number, number, string]
/** Least, most, codes. */
export type RangeRow = [number, number, string]

/** A plant as it stands in `plants/*.json`: compact, one row of figures each. mm, g. */
export interface PlantRow {
  id: string
  name: string
  botanical: string
  /** Form classes that a source gives it, the working one first. */
  classes: string
  role: Role
  habit: Habit
  shape: Record<string, number | string>
  closed?: FigureRow
  open: FigureRow
  /** Width of the flowering part, where `open` is one floret of it. */
  spread?: RangeRow
  length?: FigureRow
  stem: FigureRow
  thick: FigureRow
  blooms: FigureRow
  /** Florets on the stem, where `blooms` counts the side stems. */
  florets?: RangeRow
  many?: number
  bunch?: FigureRow
  mass: FigureRow
  /** Words, each with a #rrggbb of its own where the common one (colours.json) does not fit. */
  colours: string
  leaf: string
  care: CareRow
  note?: string
}

const WORDS: Record<string, string> = colourWords

/** Why a value was chosen, where nobody names it. */
const REASONS: Partial<Record<Figure['standing'], string>> = {
  'from memory': 'from memory: the usual size in the trade',
  ours: 'ours',
}

const figure = ([value, least, most, codes]: FigureRow): Figure => {
  const { standing, source } = cite(codes)
  return { value, range: [least, most], standing, source: REASONS[standing] ?? source }
}

const colour = (text: string): { name: string; hex: string } => {
  const cut = text.indexOf(' #')
  const name = cut < 0 ? text : text.slice(0, cut)
  const hex = cut < 0 ? WORDS[name] : text.slice(cut + 1)
  if (!hex) throw new Error(`catalogue: no colour is listed under "${name}"`)
  return { name, hex }
}

const laterals = (row: PlantRow): Figure => {
  const blooms = figure(row.blooms)
  if (!row.florets) return blooms
  const [least, most] = row.florets
  return { ...blooms, source: `ours: side stems worth cutting; a stem bears ${least}–${most} florets` }
}

/** A row of the data files as a plant. Throws an Error for a source code or a colour word that is not listed. */
export function readPlant(row: PlantRow): Plant {
  const classes = row.classes.split(' ') as FormClass[]
  const spread = row.spread
  return {
    id: row.id,
    name: row.name,
    botanical: row.botanical,
    formClass: classes[0] as FormClass,
    formClasses: classes,
    role: row.role,
    habit: row.habit,
    shape: row.shape,
    headClosed_mm: row.closed ? figure(row.closed) : null,
    headOpen_mm: figure(row.open),
    ...(spread ? { spread_mm: figure([(spread[0] + spread[1]) / 2, ...spread]) } : {}),
    headLength_mm: row.length ? figure(row.length) : null,
    stem_mm: figure(row.stem),
    stemDiameter_mm: figure(row.thick),
    bloomsPerStem: laterals(row),
    manyHeaded: row.many === 1,
    bunch: row.bunch ? figure(row.bunch) : null,
    stemMass_g: figure(row.mass),
    colours: row.colours.split(', ').map(colour),
    leafColour: row.leaf,
    care: careOf(row.care, row.note, classes[0] === 'foliage'),
  }
}
