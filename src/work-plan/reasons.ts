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
    ours('Each comes as many days before as it needs to open, but not so early that it fades.'),
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
  ],
  open: [common('Warm water, room warmth, light and a fresh cut open them; cool holds them back.')],
  vessels: [common('Vessels are ready before the flowers go in; greens hide the mechanics first.')],
  placeEarly: [common('What lasts goes in first: carnations, foliage, statice, and such.')],
  placeBefore: [memory('Opened focal flowers the day before, then topped up and kept cool.')],
  placeOnDay: [common('What wilts or bruises goes in last.')],
  pack: [
    memory('Upright, vessels braced, the water lowered to about a third and topped up on site.'),
    memory('Cool, out of the sun, no fruit beside them.'),
  ],
  carry: [memory('A vessel full of water is heavy and can tip: 1 l of water is 1 kg.')],
  set: [
    memory('Top up, turn the best side to the guests, tip each a little to see that it stands, keep flames clear.'),
    ours('Done an hour before the first guest.'),
  ],
  clear: [common('Compost without foam; rinse what was borrowed.')],
} satisfies Record<string, Reason[]>
