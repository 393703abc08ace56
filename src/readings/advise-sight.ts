import type { Edit } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { guestView, hiddenByOneAlone } from './guest-view.ts'
import { CLEAR_OVER, CLEAR_UNDER, EYE_LOW } from './guests.ts'
import { blockers, measureSight, type Sight } from './sight-line.ts'
import type { Idea, Topic } from './trial.ts'
import { type Lengths, named, percent, steps } from './words.ts'

/** A stem is not cut back to less than this part of what stands over the rim. Ours. */
const SHORTEST = 0.35

/** A vessel is not made lower than this, mm. Ours. */
export const LOWEST_VESSEL = 50

/** What is high or low of a stem: where its blooms and leaves end, over the rim, mm. */
interface Blocker {
  stem: ResolvedStem
  place: number
  top: number
  low: number
}

const aboutFaces = (engine: Engine, s: Sight, lengths: Lengths): Topic => {
  const { resolved, ready } = engine
  const { vessel } = resolved
  const view = guestView(engine, true)
  const alone = new Map(blockers(s).map((i) => [i, hiddenByOneAlone(view.stems[i]!, view)]))
  const most: Blocker[] = blockers(s)
    .sort((a, b) => alone.get(b)! - alone.get(a)!)
    .map((place) => {
      const stem = resolved.stems[place]!
      // The underside is as far under the tip as the top is over it.
      const top = ready[place]!.top
      return { stem, place, top, low: 2 * stem.stem.tip[2] - top }
    })
  const vessels = s.vessel > 0.5 * s.blocked
  const text = `Hides ${percent(s.blocked)} of the face opposite${vessels ? `, the vessel alone ${percent(s.vessel)}` : ''}`
  const idea = (edit: Edit, some: readonly Blocker[], what: string): Idea => ({
    edit,
    stems: some.map((b) => b.stem.id),
    say: (v) => `${text}: ${what}; it then hides ${percent(v.blockedFraction as number)}.`,
  })
  const names = (some: readonly Blocker[]): string => named(some.map((b) => b.stem))

  /** Shorter until the plants end `over` the table; stems too short for it are left. */
  const shorten = (few: readonly Blocker[], over: number): Idea[] => {
    const aim = over - vessel.height
    const able = few.flatMap((b) => {
      const tip = b.stem.stem.tip[2]
      const factor = Math.floor((100 * (aim - (b.top - tip))) / tip) / 100
      return tip > 0 && factor >= SHORTEST && factor < 1 ? [{ b, factor }] : []
    })
    if (able.length === 0) return []
    const edits = able.map(({ b, factor }): Edit => ({ do: 'lengthen-stems', ids: [b.stem.id], factor }))
    const edit: Edit = edits.length === 1 ? edits[0]! : { do: 'many', label: 'shortened', edits }
    const some = able.map(({ b }) => b)
    return [idea(edit, some, `shorten ${names(some)}, to end ${lengths(5 * Math.floor(over / 5))} over the table`)]
  }
  /** Raised until what is wide begins over the eyes. */
  const raise = (few: readonly Blocker[], over: number): Idea[] => {
    const by = steps(over - vessel.height - Math.min(...few.map((b) => b.low)))
    if (!(few.length > 0 && by > 0)) return []
    const ids = few.map((b) => b.stem.id)
    return [idea({ do: 'shift-stems', ids, by: [0, 0, by] }, few, `raise ${names(few)}, by ${lengths(by)}`)]
  }
  /** Outward, away from the middle, where all lines of sight cross. */
  const spread = (few: readonly Blocker[], by: number): Idea[] => {
    const edits = few.map(({ stem }): Edit => {
      const [x, y] = stem.stem.tip
      const far = Math.hypot(x, y)
      const [u, v] = far > 1 ? [x / far, y / far] : [1, 0]
      return { do: 'shift-stems', ids: [stem.id], by: [u * by, v * by, -by / 2] }
    })
    if (edits.length === 0) return []
    const edit: Edit = edits.length === 1 ? edits[0]! : { do: 'many', label: 'spread', edits }
    return [idea(edit, few, `lean ${names(few)}, out by ${lengths(by)}`)]
  }
  const remove = (few: readonly Blocker[]): Idea[] =>
    few.length > 0 ? [idea({ do: 'remove-stems', ids: few.map((b) => b.stem.id) }, few, `take ${names(few)}, out`)] : []

  /** The same flowers in a lower vessel of the same shape, so that all ends under the lines of sight. */
  const lowerVessel = (over: number): Idea[] => {
    const height = 5 * Math.floor((vessel.height - (s.top - over)) / 5)
    if (height < LOWEST_VESSEL || height >= vessel.height) return []
    const edit: Edit = { do: 'set-vessel', set: { height } }
    return [idea(edit, [], `set it in a vessel ${lengths(height)} high instead of ${lengths(vessel.height)}`)]
  }

  /** All of it smaller, vessel and stems alike, so that it ends under the lines of sight. */
  const smaller = (): Idea[] => {
    const k = CLEAR_UNDER / s.top
    const height = 5 * Math.floor((k * vessel.height) / 5)
    if (k >= 1 || height < LOWEST_VESSEL) return []
    const { stems } = resolved
    const factor = Math.floor((100 * (CLEAR_UNDER - height)) / (s.top - vessel.height)) / 100
    const edits: Edit[] = [
      { do: 'set-vessel', set: { height } },
      { do: 'lengthen-stems', ids: stems.map((x) => x.id), factor },
    ]
    const what = `set it in a vessel ${lengths(height)} high instead of ${lengths(vessel.height)}, and shorten all stems by ${percent(1 - factor)}`
    return factor < SHORTEST
      ? []
      : [{ ...idea({ do: 'many', label: 'made smaller', edits }, most, what), stems: stems.map((x) => x.id) }]
  }

  const [all, three, one] = [most, most.slice(0, 3), most.slice(0, 1)]
  // A piece that stands as high as the eyes begin is better lifted over them.
  const tall = (s.underside ?? s.top) > EYE_LOW || vessel.height > EYE_LOW * 0.8
  const lower = [CLEAR_UNDER, EYE_LOW, CLEAR_UNDER + 40].flatMap((over) => [
    ...shorten(all, over),
    ...shorten(three, over),
  ])
  const lift = [raise(all, CLEAR_OVER), raise(three, CLEAR_OVER), raise(all, EYE_LOW + 200)].flat()
  const rest = [
    ...lowerVessel(CLEAR_UNDER),
    ...lowerVessel(EYE_LOW),
    ...spread(three, 40),
    ...remove(one),
    ...remove(three),
  ]
  const first = tall ? [...lift, ...lower.slice(0, 3)] : [...lower, ...lift.slice(0, 1)]
  const blame = most.length > 0 ? `${names(three)}, hide${three.length > 1 ? '' : 's'} most` : ''
  return {
    ideas: [...first.slice(0, 3), ...smaller(), ...first.slice(3, 6), ...rest],
    otherwise: {
      text: vessels
        ? `${text}: a lower vessel, or a slimmer one that lifts the flowers ${lengths(5 * Math.ceil(CLEAR_OVER / 5))} over the table, serves.`
        : `${text}${blame ? `: ${blame}` : ''}; a lower piece ends ${lengths(5 * Math.floor(CLEAR_UNDER / 5))} over the table, a tall one begins ${lengths(5 * Math.ceil(CLEAR_OVER / 5))} over it.`,
      stems: three.map((b) => b.stem.id),
    },
  }
}

/** What hides faces, and ideas against it. */
export const adviseSight = (engine: Engine, lengths: Lengths): Topic[] => {
  const s = measureSight(engine)
  if (typeof s === 'string') return []
  const { document } = engine.resolved
  const over = (key: string, v: number): boolean => v > bandOf('sight-line', key, document)!.band[1]
  return over('blockedFraction', s.blocked) || over('blockedWorst', s.blockedWorst)
    ? [aboutFaces(engine, s, lengths)]
    : []
}
