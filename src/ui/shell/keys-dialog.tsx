import { Dialog } from '../parts/index.ts'

const MOD = /Mac|iP(hone|ad)/.test(navigator.platform) ? '⌘' : 'Ctrl'

/** Keys by the place where they hold. */
const KEYS: readonly { where: string; keys: readonly (readonly [string, string])[] }[] = [
  {
    where: 'Everywhere, unless you are typing',
    keys: [
      [`${MOD} + Z`, 'undo'],
      [`${MOD} + Shift + Z, or Ctrl + Y`, 'do it again'],
      ['?', 'this list'],
      ['Tab, Shift + Tab', 'go on, go back'],
      ['Escape', 'leave what is open, drop what is under way'],
    ],
  },
  {
    where: 'In a view, once Tab has brought you there',
    keys: [
      ['[ and ]', 'the stem before, the stem after'],
      ['← → ↑ ↓', 'move what is selected by 5 mm; with Shift by 1 mm'],
      ['Page Up, Page Down, or Alt + ↑ ↓', 'move it along the eye: away and near, or up and down'],
      ['D', 'one more of it'],
      ['M', 'mirror it, left to right'],
      ['Delete', 'take it out'],
      [', and .', 'turn by 5°; with Shift by 15°'],
      ['Enter', 'with a plant in hand: place it at the cross, which the arrows move'],
    ],
  },
  {
    where: 'By pointer or finger, in a view',
    keys: [
      ['The ring at a head, or the flower itself', 'moves all that is selected, together; with Alt they stay upright'],
      ['The two bars where a stem enters', 'move that one crossing'],
      ['The lozenge at half its length', 'bows that one stem'],
      ['The ring round the plan', 'turns both views; where flowers hide it, its line still does'],
      ['Shift and press', 'one more, or one less, selected; drawn over paper, a box selects'],
    ],
  },
  {
    where: 'In a number field',
    keys: [
      ['↑ ↓', 'one step more or less'],
      ['Page Up, Page Down', 'ten steps'],
      ['Enter', 'take what is typed'],
      ['Escape', 'put back what was there'],
    ],
  },
]

/** The list of keys. */
export const KeysDialog = ({ onClose }: { onClose: () => void }) => (
  <Dialog title="Keys" onClose={onClose}>
    {KEYS.map(({ where, keys }) => (
      <section key={where} className="keys">
        <h3>{where}</h3>
        <dl>
          {keys.map(([key, does]) => (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{does}</dd>
            </div>
          ))}
        </dl>
      </section>
    ))}
  </Dialog>
)
