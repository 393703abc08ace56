import type { Edit } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { bandOf, isOutside } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureProminence, type Prominence } from './focal-prominence.ts'
import type { Idea, Topic, Values } from './trial.ts'
import { type Lengths, named, numbered, percent, steps } from './words.ts'

const along = (stem: ResolvedStem, mm: number): Edit => ({
  do: 'shift-stems',
  ids: [stem.id],
  by: [stem.axis[0] * mm, stem.axis[1] * mm, stem.axis[2] * mm],
})

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
      ...near.map((s) => setAside(stem, s, lengths, words)),
      bringOut(stem, 0.7, lengths, words),
    ],
    otherwise: {
      text: `${numbered(stem)}, shows ${percent(p.unhidden[worst]!)} of itself even where it shows best: cut back what stands round it.`,
      stems: [stem.id],
    },
  }
}

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
  const strong = stems[p.stems.find((d) => !p.focal.includes(d.place))!.place]!
  const focal = stems[p.stems.find((d) => p.focal.includes(d.place))!.place]!
  const deep = steps(0.6 * strong.head_mm)
  return {
    ideas: [
      ...openIdea(engine, p, then.rank),
      bringOut(focal, 0.5, lengths, then.rank),
      {
        edit: along(strong, -deep),
        stems: [strong.id, focal.id],
        say: (v) =>
          `${numbered(strong)}, draws the eye before ${numbered(focal)}: set it ${lengths(deep)} deeper, ${then.rank(v)}.`,
      },
      {
        edit: { do: 'lengthen-stems', ids: [strong.id], factor: 0.8 },
        stems: [strong.id, focal.id],
        say: (v) => `${numbered(strong)}, draws the eye before ${numbered(focal)}: cut it by a fifth, ${then.rank(v)}.`,
      },
    ],
    otherwise: {
      text: `${numbered(strong)}, draws the eye before ${numbered(focal)}: set it deeper, or choose a focal flower that is larger or stands off more.`,
      stems: [strong.id, focal.id],
    },
  }
}

const aboutShare = (engine: Engine, p: Prominence): Topic => {
  const { stems } = engine.resolved
  const ids = p.focal.map((i) => stems[i]!.id)
  const twin = stems[p.stems.find((d) => p.focal.includes(d.place))!.place]!
  const words = then.share(p.focalShare!)
  let id = `${twin.id}-b`
  while (stems.some((s) => s.id === id)) id += 'b'
  const [x, y] = [twin.stem.tip[0], twin.stem.tip[1]]
  const from = Math.hypot(x, y)
  const [dx, dy] = from > 1 ? [-y / from, x / from] : [1, 0]
  const beside = (side: number): Idea => ({
    edit: {
      do: 'duplicate-stems',
      ids: [twin.id],
      newIds: [id],
      by: [side * dx * twin.head_mm * 0.9, side * dy * twin.head_mm * 0.9, -0.2 * twin.head_mm],
    },
    stems: [twin.id],
    say: (v) => `Set one more beside ${numbered(twin)}: ${words(v)}.`,
  })
  return {
    ideas: [...openIdea(engine, p, words), beside(1), beside(-1)],
    otherwise: {
      text: `The focal flowers hold ${percent(p.focalShare!)} of the eye: set another beside ${numbered(twin)}, or choose larger ones.`,
      stems: ids,
    },
  }
}

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
      text: `The vessel draws ${(p.vesselPull!).toFixed(1)} × what ${numbered(best)}, draws: let greens fall over its rim, or choose a vessel nearer the colour of the cloth.`,
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
  if (amiss('focalShare', p.focalShare)) topics.push(aboutShare(engine, p))
  if (amiss('vesselPull', p.vesselPull!)) topics.push(aboutVessel(engine, p, lengths))
  return topics
}
