import { fitWall } from './limits.ts'
import type { Arrangement, Palette, Setting, Slot, Stem, StemColour, Vessel } from './types.ts'

/** The colour of a slot that could not be read, and of a stem in a palette without slots: a quiet warm grey. Ours. */
export const UNKNOWN_COLOUR = '#b8b2a7'

/** What a key gets that is not in the file. All ours, but where a line says otherwise. */
export const DEFAULTS = {
  title: 'Untitled',
  form: 'round',
  /** A small bowl of about 14 × 8 cm: the inexpensive vessel that the tool is for. */
  vessel: {
    plan: 'round',
    width: 140,
    depth: 140,
    height: 84,
    wall: 4,
    material: 'ceramic',
    colour: '#f1ece2',
    mechanics: 'netting',
    /** Common practice: kept well filled, with room to carry it. */
    waterFill: 0.8,
  },
  /** Of a new design; a file without a palette gets one without slots. */
  palette: {
    name: 'First colours',
    slots: [
      { colour: '#c9717b', part: 'focal' },
      { colour: '#e3b9a4', part: 'mass' },
      { colour: '#8f6f92', part: 'line' },
      { colour: '#d6a24a', part: 'form' },
      { colour: '#f2eadb', part: 'filler' },
      { colour: '#7d8f69', part: 'greens' },
    ],
  },
  slot: { colour: UNKNOWN_COLOUR, part: 'mass' },
  stem: { role: 'mass', openness: 0.7, bend: 0, piece: 'whole' },
  setting: {
    copies: 1,
    light: 'daylight',
    linen: '#fbfaf7',
    /** 60 in, a common round for eight to ten guests: common practice. */
    table: { shape: 'round', diameter: 1524 },
  },
} as const satisfies {
  title: string
  form: Arrangement['form']
  vessel: Vessel
  palette: { name: string; slots: readonly Slot[] }
  slot: Slot
  stem: Pick<Stem, 'role' | 'openness' | 'bend' | 'piece'>
  setting: Setting
}

/** A document without stems, in the vessel given or the default bowl. */
export const newArrangement = (vessel: Vessel = { ...DEFAULTS.vessel }): Arrangement => ({
  format: 'pedicel-arrangement',
  version: 1,
  title: DEFAULTS.title,
  form: DEFAULTS.form,
  vessel,
  palette: { name: DEFAULTS.palette.name, slots: DEFAULTS.palette.slots.map((s) => ({ ...s })) },
  stems: [],
  setting: { ...DEFAULTS.setting, table: { ...DEFAULTS.setting.table } },
})

/** The colour of a stem that has none: the first slot of its part, else the first slot, else the quiet grey. */
export const defaultColour = (role: Stem['role'], palette: Palette): StemColour => {
  const slot = palette.slots.findIndex((s) => s.part === role)
  if (slot >= 0) return { slot }
  return palette.slots.length > 0 ? { slot: 0 } : UNKNOWN_COLOUR
}

/** A vessel with its missing keys filled in. Without a plan it is round, or oval where its depth differs from its width. */
export const completeVessel = (given: Partial<Vessel> & Pick<Vessel, 'width' | 'height'>): Vessel => {
  const depth = given.depth ?? given.width
  const plan = given.plan ?? (depth === given.width ? 'round' : 'oval')
  const vessel = { ...DEFAULTS.vessel, ...given, plan, depth }
  return given.wall === undefined ? { ...vessel, wall: fitWall(vessel) ?? vessel.wall } : vessel
}

/**
 * A document with every missing optional key filled in; unknown keys stay.
 * @param raw what is in the file, already known to have nothing wrong in it
 */
export const complete = (raw: Record<string, unknown>): Arrangement => {
  const given = raw as Partial<Arrangement> & Pick<Arrangement, 'vessel'>
  const palette = {
    name: '',
    ...given.palette,
    slots: (given.palette?.slots ?? []).map((s) => ({ ...DEFAULTS.slot, ...s })),
  }
  const stems = (given.stems ?? []).map((stem) => ({
    ...DEFAULTS.stem,
    ...stem,
    colour: stem.colour ?? defaultColour(stem.role ?? DEFAULTS.stem.role, palette),
  }))
  const setting = { ...DEFAULTS.setting, ...given.setting }
  return {
    ...raw,
    format: 'pedicel-arrangement',
    version: 1,
    title: given.title ?? DEFAULTS.title,
    form: given.form ?? DEFAULTS.form,
    vessel: completeVessel(given.vessel),
    palette,
    stems,
    setting: { ...setting, table: { ...setting.table } },
  }
}
