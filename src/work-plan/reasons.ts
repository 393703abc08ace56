import type { Reason } from './types.ts'

const common = (text: string): Reason => ({ text, standing: 'common practice', source: 'common practice' })
const memory = (text: string): Reason => ({ text, standing: 'from memory', source: 'from memory' })
const ours = (text: string): Reason => ({ text, standing: 'ours', source: 'ours' })
const read = (text: string, source: string): Reason => ({ text, standing: 'source', source })

/** Why each kind of task stands where it does. Days are counted back from the event. */
export const REASONS = {
  book: [common('Wholesale wants orders a month ahead, and none under two weeks without talking.')],
  trial: [common('One piece made and timed is a better measure of the work than any table.')],
  settle: [ours('What is settled now can still be ordered.')],
  arrive: [
    common('Most flowers are in hand two to three days before; slow openers sooner.'),
    ours(
      'Each comes as many days before as it needs to open, but not so early that it fades before the event is over; where you say on which days flowers can come, on the best of those.',
    ),
    ours('One takes them in.'),
  ],
  condition: [
    read(
      'Unpack, strip the leaves below the waterline, recut by 1–2 in, stand in clean food solution.',
      'Floral Design Institute and California Cut Flower Commission, flower pages',
    ),
    read(
      'At least two hours in water before use, better overnight.',
      'Floral Design Institute; Shaker Lakes garden club',
    ),
    common('Food by its packet only: too much harms.'),
  ],
  cool: [
    read('Most cut flowers bear a few days to a week at 2–4 °C.', 'NC State University and ASCFG'),
    common('Tropical flowers go brown in the cold.'),
  ],
  ethylene: [
    read(
      'Ethylene comes from ripe fruit, fumes and fading flowers, and makes those drop or fade that it touches.',
      'Floral Design Institute and the catalogue’s care rows',
    ),
  ],
  open: [
    common('Warm water, room warmth, light and a fresh cut open them; cool holds them back.'),
    common(
      'A bud that was packed closed stays closed: roses, ranunculus and peonies are open before they are packed close.',
    ),
  ],
  vessels: [common('Vessels are ready before the flowers go in; greens hide the mechanics first.')],
  water: [
    common('Vase water is looked at daily, and changed or topped up every day or two.'),
    ours('Its time is yours to set; pieces that are worked at are topped up as part of that.'),
  ],
  lifting: [
    read(
      'Full vessels are heavy: 23 kg is the most for one in the best case, and far less low down or turned.',
      'NIOSH lifting equation (OSHA eTool)',
    ),
    ours('Said from 10 kg on, lifted by two from 16 kg. Weights of stems are from memory.'),
  ],
  placeEarly: [
    common('What lasts goes in first: carnations, foliage, statice, and such.'),
    memory('Greens go in a day or two ahead.'),
  ],
  placeBefore: [memory('Opened focal flowers the day before, then topped up and kept cool.')],
  placeOnDay: [common('What wilts or bruises goes in last: hydrangea, sweet pea, dahlia, iris.')],
  placeOrder: [common('Greens and lines give the outline, then what leads and carries it, then what fills.')],
  bind: [common('A hand-held bunch is bound where its stems cross.')],
  pack: [
    memory('Water slops on the road, and a full vessel tips.'),
    memory('Cool, out of the sun, no fruit beside them.'),
  ],
  carry: [
    memory('A vessel full of water is heavy and can tip: 1 l of water is 1 kg.'),
    memory('A van at 5–15 °C, out of the sun.'),
  ],
  set: [
    memory('What was carried has moved, and stands in too little water.'),
    ours('Done an hour before the first guest.'),
  ],
  clear: [common('Compost without foam; rinse what was borrowed.'), ours('Taken to need as long as setting out.')],
} satisfies Record<string, Reason[]>
