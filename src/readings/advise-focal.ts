import type { Vessel } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { addGroup, along, becomeFocal, forward, thinGreens } from './advise-focal-group.ts'
import { grouped } from './advise-words.ts'
import { bandOf, isOutside } from './bands.ts'
import { distance } from './contrast.ts'
import type { Engine } from './engine.ts'
import { measureProminence, type Prominence } from './focal-prominence.ts'
import { labOnce } from './tones.ts'
import type { Idea, Topic, Values } from './trial.ts'
import { type Lengths, named, numbered, percent, steps } from './words.ts'

const bringOut = (stem: ResolvedStem, part: number, lengths: Lengths, then: (v: Values) => string): Idea => {
  const mm = steps(part * stem.head_mm)
  return {
    edit: along(stem, mm),
    stems: [stem.id],
    say: (v) => `Bring out ${numbered(stem)}, by ${lengths(mm)} the way it faces: ${then(v)}.`,
  }
}

const apart = (a: ResolvedStem, b: ResolvedStem): number => Math.hypot(...a.stem.tip.map((v, i) => v - b.stem.tip[i]!))

/** Sets a stem aside from a bloom that it hides: sideways, as seen by one whom the bloom faces. */
const setAside = (bloom: ResolvedStem, stem: ResolvedStem, lengths: Lengths, then: (v: Values) => string): Idea => {
  const mm = steps(0.5 * bloom.head_mm)
  const away = stem.stem.tip.map((v, i) => v - bloom.stem.tip[i]!)
  const facing = bloom.axis.reduce((sum, v, i) => sum + v * away[i]!, 0)
  const side = away.map((v, i) => v - facing * bloom.axis[i]!)
  const length = Math.hypot(...side)
  const [x, y, z] = length > 1 ? side.map((v) => (v * mm) / length) : [0, 0, -mm]
  return {
    edit: { do: 'shift-stems', ids: [stem.id], by: [x!, y!, z!] },
    stems: [stem.id, bloom.id],
    say: (v) => `Set ${numbered(stem)}, ${lengths(mm)} aside from ${numbered(bloom)}: ${then(v)}.`,
  }
}

const then = {
  visible:
    (before: number) =>
    (v: Values): string =>
      `${percent(v.focalVisible as number)} of the focal flowers then shows unhidden instead of ${percent(before)}`,
  rank: (v: Values): string =>
    v.focalRank === 1 ? 'a focal flower then leads' : `the first focal flower then ranks ${v.focalRank}`,
  share:
    (before: number) =>
    (v: Values): string =>
      `the focal flowers then hold ${percent(v.focalShare as number)} of the eye instead of ${percent(before)}`,
}

const aboutHidden = (engine: Engine, p: Prominence, lengths: Lengths): Topic => {
  const { stems } = engine.resolved
  const worst = p.unhidden.indexOf(Math.min(...p.unhidden))
  const stem = stems[p.focal[worst]!]!
  const words = then.visible(p.focalVisible!)
  const near = stems
    .filter((s) => s.role !== 'focal')
    .sort((a, b) => apart(a, stem) - apart(b, stem))
    .slice(0, 2)
  return {
    ideas: [
      bringOut(stem, 0.35, lengths, words),
      bringOut(stem, 1, lengths, words),
      ...forward(engine, p, lengths, words),
      ...near.map((s) => setAside(stem, s, lengths, words)),
      bringOut(stem, 0.7, lengths, words),
    ],
    otherwise: {
      text: `${numbered(stem)}, shows ${percent(p.unhidden[worst]!)} of itself even where it shows best: cut back what stands round it.`,
      stems: [stem.id],
    },
  }
}

/** Rivals that are set back at once, at most. Ours. */
const MOST_RIVALS = 6
/** Under this share of the eye one more flower is not enough: then a group is tried first. Ours. */
const FAR_SHORT = 0.08

const openIdea = (engine: Engine, p: Prominence, words: (v: Values) => string): Idea[] => {
  const { stems } = engine.resolved
  const shut = p.focal.map((i) => stems[i]!).filter((s) => s.openness < 0.95 && s.stem.head === undefined)
  if (shut.length === 0) return []
  const ids = shut.map((s) => s.id)
  return [
    {
      edit: { do: 'set-stems', ids, set: { openness: 1 } },
      stems: ids,
      say: (v) => `Let ${named(shut)}, open fully before they are set: ${words(v)}.`,
    },
  ]
}

const aboutLead = (engine: Engine, p: Prominence, lengths: Lengths): Topic => {
  const { stems } = engine.resolved
  const first = p.stems.findIndex((d) => p.focal.includes(d.place))
  const rivals = p.stems.slice(0, first === 0 ? 1 : first).filter((d) => !p.focal.includes(d.place))
  const strong = stems[p.stems.find((d) => !p.focal.includes(d.place))!.place]!
  const focal = stems[p.stems[first]!.place]!
  const some = (rivals.length > 0 ? rivals.map((d) => stems[d.place]!) : [strong]).slice(0, MOST_RIVALS)
  const deep = steps(0.6 * strong.head_mm)
  return {
    ideas: [
      ...openIdea(engine, p, then.rank),
      ...forward(engine, p, lengths, then.rank),
      ...becomeFocal(engine, focal, 2, then.rank),
      {
        edit: { do: 'many', label: 'set deeper', edits: some.map((s) => along(s, -deep)) },
        stems: [...some, focal].map((s) => s.id),
        say: (v) =>
          `${grouped(some)} ${some.length === 1 ? 'draws' : 'draw'} the eye before ${numbered(focal)}: set ${some.length === 1 ? 'it' : 'them'} ${lengths(deep)} deeper, ${then.rank(v)}.`,
      },
      bringOut(focal, 0.5, lengths, then.rank),
      ...addGroup(engine, focal, 2, then.rank),
      ...becomeFocal(engine, focal, 4, then.rank),
      {
        edit: { do: 'lengthen-stems', ids: some.map((s) => s.id), factor: 0.75 },
        stems: [...some, focal].map((s) => s.id),
        say: (v) =>
          `${grouped(some)} ${some.length === 1 ? 'draws' : 'draw'} the eye before ${numbered(focal)}: cut ${some.length === 1 ? 'it' : 'them'} by a quarter, ${then.rank(v)}.`,
      },
    ],
    otherwise: {
      text: `${numbered(strong)}, draws the eye before ${numbered(focal)}: set it deeper, or choose a focal flower that is larger or stands off more.`,
      stems: [strong.id, focal.id],
    },
  }
}

const aboutShare = (engine: Engine, p: Prominence, lengths: Lengths): Topic => {
  const { stems } = engine.resolved
  const ids = p.focal.map((i) => stems[i]!.id)
  const twin = stems[p.stems.find((d) => p.focal.includes(d.place))!.place]!
  const words = then.share(p.focalShare!)
  const far = p.focalShare! < FAR_SHORT
  const one = addGroup(engine, twin, 1, words)
  const group = [...becomeFocal(engine, twin, 2, words), ...addGroup(engine, twin, 2, words)]
  return {
    ideas: [
      ...openIdea(engine, p, words),
      ...(far ? [...group, ...one] : [...one, ...group]),
      ...addGroup(engine, twin, 4, words),
      ...thinGreens(engine, twin, words),
      ...forward(engine, p, lengths, words),
    ],
    otherwise: {
      text: `The focal flowers hold ${percent(p.focalShare!)} of the eye: set another beside ${numbered(twin)}, or choose larger ones.`,
      stems: ids,
    },
  }
}

/** Further from the cloth than this a vessel can be had that is nearer it, Lab. Ours. */
const NEAR_CLOTH = 15

/** A vessel that draws less than this one. Of clear glass, or of the colour of the cloth, only a smaller one does. */
const quieter = ({ material, colour }: Vessel, linen: string): string =>
  material === 'glass' || distance(labOnce(colour), labOnce(linen)) < NEAR_CLOTH
    ? 'a smaller vessel'
    : 'a vessel nearer the colour of the cloth'

const aboutVessel = (engine: Engine, p: Prominence, lengths: Lengths): Topic => {
  const { stems, vessel } = engine.resolved
  const best = stems[p.stems.find((d) => p.focal.includes(d.place))!.place]!
  const greens = stems
    .filter((s) => s.role === 'greens')
    .sort((a, b) => a.stem.tip[2] - b.stem.tip[2])
    .slice(0, 2)
  const down = steps(0.4 * vessel.height)
  return {
    ideas: greens.map((s) => ({
      edit: { do: 'shift-stems', ids: [s.id], by: [0.3 * s.stem.tip[0], 0.3 * s.stem.tip[1], -down] },
      stems: [s.id],
      say: (v) =>
        `Let ${numbered(s)}, fall ${lengths(down)} lower over the rim: ${(v.vesselRank as number) > p.vesselRank ? `the vessel then ranks ${v.vesselRank} instead of ${p.vesselRank}` : 'the vessel then draws less'}.`,
    })),
    otherwise: {
      text: `The vessel draws ${(p.vesselPull!).toFixed(1)} × what the focal flowers draw together: let greens fall over its rim, or choose ${quieter(vessel, engine.resolved.document.setting.linen)}.`,
      stems: [best.id],
    },
  }
}

/** What is amiss with the lead of the focal flowers, and ideas against it. */
export const adviseFocal = (engine: Engine, lengths: Lengths): Topic[] => {
  const p = measureProminence(engine)
  if (p.focalShare === null) return []
  const { document } = engine.resolved
  const amiss = (key: string, value: number): boolean =>
    isOutside(value, bandOf('focal-prominence', key, document)!.band)
  const topics: Topic[] = []
  if (amiss('focalLead', p.focalLead!) || amiss('focalRank', p.focalRank!)) topics.push(aboutLead(engine, p, lengths))
  if (amiss('focalVisible', p.focalVisible!)) topics.push(aboutHidden(engine, p, lengths))
  if (amiss('focalShare', p.focalShare)) topics.push(aboutShare(engine, p, lengths))
  if (amiss('vesselPull', p.vesselPull!)) topics.push(aboutVessel(engine, p, lengths))
  return topics
}
