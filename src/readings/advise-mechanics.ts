import type { Edit, Point3 } from '../arrangement/index.ts'
import { innerSection, type ResolvedStem, reachIn } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import { openingFor } from './crowding.ts'
import type { Engine } from './engine.ts'
import type { Loose } from './held-stems.ts'
import { type Mechanical, measureMechanics, stemsWhere } from './mechanics.ts'
import type { Idea, Topic } from './trial.ts'
import { named, percent } from './words.ts'

const NETTING = 'Fill the mouth with crumpled netting (gloves and eye protection while cutting it)'

const WHY: Record<Loose, string> = {
  outside: 'cross outside the mouth',
  rim: 'have nothing to lean on before they fall to the rim',
  slips: 'would slip on the floor',
  lifts: 'hang so far over the rim that their ends lift',
  shallow: 'stand too little below the rim to be gripped',
  far: 'lean farther than it holds',
  pins: 'miss the pins',
}

/** Which of the reasons most of them have. */
const reasonFor = (m: Mechanical): Loose => {
  const counts = new Map<Loose, number>()
  for (const { loose } of m.holds) if (loose) counts.set(loose, (counts.get(loose) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))[0]![0]
}

/** The tip nearer over the crossing by this share, as much higher as keeps its distance. */
const raised = ({ stem }: ResolvedStem, share: number): Point3 => {
  const [dx, dy] = [stem.tip[0] - stem.mouth[0], stem.tip[1] - stem.mouth[1]]
  const far = Math.hypot(dx, dy, stem.tip[2])
  const k = 1 - share
  const up = Math.sqrt(Math.max(stem.tip[2] ** 2, far ** 2 - (k * Math.hypot(dx, dy)) ** 2))
  return [stem.mouth[0] + k * dx, stem.mouth[1] + k * dy, Math.round(Math.max(stem.tip[2], up))]
}

const raise = (stems: readonly ResolvedStem[], share: number): Edit => ({
  do: 'many',
  label: 'Set steeper',
  edits: stems.map((s) => ({ do: 'set-stems', ids: [s.id], set: { tip: raised(s, share) } })),
})

/** The crossing on the side to which the stem leans, nine tenths out to the inner edge; or as much inside it. */
const toRim = (engine: Engine, stems: readonly ResolvedStem[]): Edit => {
  const { vessel } = engine.resolved
  const rim = innerSection(vessel, 1)
  return {
    do: 'many',
    label: 'Lean on the rim',
    edits: stems.map(({ id, stem }) => {
      const [dx, dy] = [stem.tip[0] - stem.mouth[0], stem.tip[1] - stem.mouth[1]]
      const [x, y] = Math.hypot(dx, dy) > 1 ? [dx, dy] : stem.mouth
      const reach = reachIn(vessel, rim, x, y)
      const k = reach > 1e-6 ? 0.92 / reach : 0
      return { do: 'set-stems', ids: [id], set: { mouth: [k * x, k * y] } }
    }),
  }
}

const aboutLoose = (engine: Engine, m: Mechanical): Topic => {
  const { vessel, stems } = engine.resolved
  const loose = stemsWhere(engine, (i) => m.holds[i]!.loose !== null)
  const ids = loose.map((s) => s.id)
  const text = `${loose.length} of ${stems.length} stems would not stay as drawn: most ${WHY[reasonFor(m)]}. `
  const left = (values: { unsupported?: unknown }): string =>
    `: then ${(values.unsupported as string[]).length} are left`
  const bare = vessel.mechanics === 'none' || vessel.mechanics === 'tape-grid'
  const ideas: Idea[] = [
    ...(bare
      ? [
          {
            edit: { do: 'set-vessel', set: { mechanics: 'netting' } } as const,
            stems: ids,
            say: (v: Record<string, unknown>) => `${text}${NETTING}${left(v)}.`,
          },
        ]
      : []),
    { edit: toRim(engine, loose), stems: ids, say: (v) => `${text}Let ${named(loose)} cross at the rim${left(v)}.` },
    ...[0.3, 0.6].map(
      (share): Idea => ({
        edit: raise(loose, share),
        stems: ids,
        say: (v) =>
          `${text}Set ${named(loose)} steeper, their tips ${percent(share)} nearer over where they cross${left(v)}.`,
      }),
    ),
  ]
  return {
    ideas,
    otherwise: {
      text: `${text}${bare ? `${NETTING}, and greens over it; or brace` : 'Brace'} ${named(loose)} on neighbours.`,
      stems: ids,
    },
  }
}

const aboutDry = (engine: Engine, m: Mechanical): Topic => {
  const { vessel } = engine.resolved
  const dry = stemsWhere(engine, (i) => m.holds[i]!.dry)
  const ids = dry.map((s) => s.id)
  const text = `The ends of ${named(dry)} stand out of the water. `
  const fills = [0.8, 0.9].filter((fill) => fill > vessel.waterFill)
  const left = (values: { dryEnds?: unknown }): string => {
    const count = (values.dryEnds as string[]).length
    return count === 0 ? ': then none does' : `: then ${count} ${count === 1 ? 'does' : 'do'}`
  }
  return {
    ideas: [
      ...fills.map(
        (waterFill): Idea => ({
          edit: { do: 'set-vessel', set: { waterFill } },
          stems: ids,
          say: (v) => `${text}Fill it to ${percent(waterFill)}${left(v)}.`,
        }),
      ),
      ...[0.3, 0.6].map(
        (share): Idea => ({
          edit: raise(dry, share),
          stems: ids,
          say: (v) => `${text}Set them steeper, so that they reach deeper${left(v)}.`,
        }),
      ),
    ],
    otherwise: { text: `${text}Give each a water tube, or set them steeper; keep it topped up.`, stems: ids },
  }
}

/** Fewest stems to take out, least seen first, until the neck is as full as wanted. */
const spare = (engine: Engine, m: Mechanical, most: number): ResolvedStem[] => {
  const { stems } = engine.resolved
  const { pixels } = engine.seen()
  const seen = (i: number): number => pixels[i * 4 + 1]! + pixels[i * 4 + 2]!
  const order = stems.map((_, i) => i).filter((i) => stems[i]!.role !== 'focal')
  order.sort((a, b) => seen(a) - seen(b) || a - b)
  const gone = new Set<number>()
  const full = (): number =>
    (openingFor(stems.flatMap((s, i) => (gone.has(i) ? [] : [s.plant.stemDiameter_mm.value]))) / m.opening_mm) ** 2
  for (const i of order) {
    if (full() <= most) break
    gone.add(i)
  }
  return stems.filter((_, i) => gone.has(i))
}

const aboutCrowding = (engine: Engine, m: Mechanical, most: number): Topic => {
  const text = `The neck is ${percent(m.crowding)} as full as circles pack, wanted at most ${percent(most)}. `
  const gone = spare(engine, m, most)
  const ids = gone.map((s) => s.id)
  const otherwise = { text: `${text}Take fewer or thinner stems, or a vessel with a wider neck.`, stems: ids }
  if (ids.length === 0) return { ideas: [], otherwise }
  return {
    ideas: [
      {
        edit: { do: 'remove-stems', ids },
        stems: ids,
        say: (v) => `${text}Leave out ${named(gone)}, which are seen least: then ${percent(v.crowding as number)}.`,
      },
    ],
    otherwise,
  }
}

const aboutUnder = (engine: Engine, m: Mechanical): Topic => {
  const under = stemsWhere(engine, (i) => m.under[i]!)
  const ids = under.map((s) => s.id)
  const text = `Leaf or bloom of ${named(under)} lies under the waterline, where it rots. `
  return {
    ideas: [0.15, 0.3].map(
      (share): Idea => ({
        edit: { do: 'shift-stems', ids, by: [0, 0, Math.round(share * engine.resolved.vessel.height)] },
        stems: ids,
        say: () => `${text}Raise it over the water.`,
      }),
    ),
    otherwise: { text: `${text}Strip what is below the rim.`, stems: ids },
  }
}

/** What is amiss with how the stems are held and watered, and ideas against it. */
export const adviseMechanics = (engine: Engine): Topic[] => {
  if (engine.resolved.stems.length === 0) return []
  const m = measureMechanics(engine)
  const most = bandOf('mechanics', 'crowding', engine.resolved.document)?.band[1] ?? 1
  const topics: Topic[] = []
  if (m.holds.some((h) => h.loose)) topics.push(aboutLoose(engine, m))
  if (m.holds.some((h) => h.dry)) topics.push(aboutDry(engine, m))
  if (m.crowding > most) topics.push(aboutCrowding(engine, m, most))
  if (m.under.some(Boolean)) topics.push(aboutUnder(engine, m))
  return topics
}
