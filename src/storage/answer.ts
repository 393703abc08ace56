import { type Arrangement, LIMITS, type Palette, paletteProblems } from '../arrangement/index.ts'
import { crc32 } from './crc32.ts'
import type { Got } from './packing.ts'
import { plainDesign } from './parcel.ts'
import { lettersMissing, seal, unseal } from './sealed.ts'
import { sha256 } from './sha256.ts'

/** What the partner says: which palette, if one was chosen, and a note. */
export interface Answer {
  /** Of the design that was looked at: see `fingerprint`. */
  design: string
  title: string
  /** Who answers, as they wrote it; '' if they did not. */
  from: string
  chosen: Palette | null
  note: string
}

/** The name of the fragment that holds an answer, and the word before it in a message. */
export const ANSWER = '#answer='
const CODE = 'pedicel-answer:'
/** Characters of the one who answers. */
export const MOST_NAME = 60

/** What there is to look at, colours left aside, as bytes. */
const shapeOf = (design: Arrangement): Uint8Array => {
  const { form, vessel, stems } = plainDesign(design)
  const shape = JSON.stringify([
    [vessel.plan, vessel.width, vessel.depth, vessel.height, vessel.profile ?? null, vessel.wall, vessel.material],
    form,
    stems.map((s) => [s.id, s.plant, s.openness, s.mouth, s.tip, s.bend, s.head ?? null, s.piece]),
  ])
  return new TextEncoder().encode(shape)
}

/** Letters of a fingerprint, 80 bits: two designs that share one by chance are not to be met. Ours. */
const FINGERPRINT = 20
/** Those of answers that were written before: a check sum of 32 bits. */
const OLD_FINGERPRINT = 8

/**
 * Twenty letters that stand for what is there to look at, colours left aside: the same after another palette was put on it, after a
 * new title, date or number of tables; another one as soon as a stem or the vessel is another.
 */
export const fingerprint = (design: Arrangement): string => sha256(shapeOf(design)).slice(0, FINGERPRINT)

const oldFingerprint = (design: Arrangement): string =>
  crc32(shapeOf(design)).toString(16).padStart(OLD_FINGERPRINT, '0')

/**
 * Does an answer belong to this design? `changed`: one of the same name whose stems or vessel were others then;
 * `other`: neither name nor shape are the same.
 */
export const answerFits = (answer: Answer, design: Arrangement): 'same' | 'changed' | 'other' => {
  const print = answer.design.length === OLD_FINGERPRINT ? oldFingerprint(design) : fingerprint(design)
  return answer.design === print ? 'same' : answer.title === design.title ? 'changed' : 'other'
}

const quoted = (text: string): string => `“${text}”`
const codeOf = (answer: Answer): Promise<Got<string>> => seal(JSON.stringify(answer))

/** The answer as words that anyone can read, and a last line that the tool reads. */
export const answerText = async (answer: Answer): Promise<Got<string>> => {
  const code = await codeOf(answer)
  if (!code.ok) return code
  const { title, from, chosen, note } = answer
  const lines = [
    `Pedicel answer to ${quoted(title)}${from ? ` from ${from}` : ''}`,
    chosen ? `I like this one: ${chosen.name || 'the one on the sheet'}` : 'I have not chosen a palette.',
    ...(note ? [note] : []),
    `${CODE}${code.value}`,
  ]
  return { ok: true, value: lines.join('\n') }
}

/** The answer as the fragment of a link. */
export const answerFragment = async (answer: Answer): Promise<Got<string>> => {
  const code = await codeOf(answer)
  return code.ok ? { ok: true, value: ANSWER + code.value } : code
}

const textOf = (x: unknown, most: number): string => (typeof x === 'string' ? [...x].slice(0, most).join('') : '')

const answerOf = (text: string): Got<Answer> => {
  const no: Got<Answer> = { ok: false, message: 'There is no answer in it.' }
  let raw: Record<string, unknown> | null
  try {
    raw = JSON.parse(text) as Record<string, unknown> | null
  } catch {
    return no
  }
  if (typeof raw !== 'object' || raw === null || !/^([0-9a-f]{8}|[0-9a-f]{20})$/.test(String(raw.design))) return no
  const chosen = raw.chosen as Partial<Palette> | null | undefined
  if (chosen && paletteProblems(chosen).length > 0) return no
  return {
    ok: true,
    value: {
      design: String(raw.design),
      title: textOf(raw.title, LIMITS.text),
      from: textOf(raw.from, MOST_NAME),
      chosen: chosen
        ? {
            name: chosen.name ?? '',
            slots: (chosen.slots ?? []).map(({ colour, part }) => ({ colour, part: part ?? 'mass' })),
          }
        : null,
      note: textOf(raw.note, LIMITS.text),
    },
  }
}

/** Lines into which a mail program may have broken the last one. Ours. */
const MOST_LINES = 40

/**
 * Finds the answer in what was pasted: a link, the text, or a message with one of them somewhere in it, quoted (`> `) or
 * with its code broken into lines. In words why not, where there is none or it is not whole.
 */
export const readAnswer = async (pasted: string): Promise<Got<Answer>> => {
  const start = [CODE, ANSWER].map((mark) => ({ at: pasted.lastIndexOf(mark), mark })).sort((a, b) => b.at - a.at)[0]!
  if (start.at < 0)
    return { ok: false, message: 'There is no answer in this text: its last line or its link is missing.' }
  const lines = pasted
    .slice(start.at + start.mark.length)
    .split(/\s*\n[\s>]*/)
    .slice(0, MOST_LINES)
  let code = lines[0]!.trim().split(/\s/)[0]!
  for (let n = 1; ; n++) {
    const text = await unseal(code)
    if (text.ok) return answerOf(text.value)
    const more = lines[n]?.trim()
    // Words of the message that stand behind the code don't belong to it.
    if (!more || !/^[\w.-]+$/.test(more) || lettersMissing(code) === 0) return text
    code += more
  }
}
