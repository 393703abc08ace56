import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/arrangement/index.ts'
import {
  type Answer,
  answerFits,
  answerFragment,
  answerText,
  fingerprint,
  readAnswer,
} from '../../../src/storage/index.ts'
import { bowl, palettes } from '../arrangement/helpers.ts'

const answer = (more: Partial<Answer> = {}): Answer => ({
  design: fingerprint(bowl()),
  title: 'Window-sill bowl',
  from: 'Jo',
  chosen: { name: 'Straw and linen', slots: [{ colour: '#e8d9a0', part: 'focal' }] },
  note: 'A little less yellow?\nOtherwise yes.',
  ...more,
})
const textOf = async (given: Answer): Promise<string> => {
  const made = await answerText(given)
  if (!made.ok) throw new Error(made.message)
  return made.value
}

describe('an answer', () => {
  it('can be read by anyone, and its last line by the tool', async () => {
    const lines = (await textOf(answer())).split('\n')
    expect(lines.slice(0, 4)).toEqual([
      'Pedicel answer to “Window-sill bowl” from Jo',
      'I like this one: Straw and linen',
      'A little less yellow?',
      'Otherwise yes.',
    ])
    expect(lines[4]).toMatch(/^pedicel-answer:2\.[0-9a-f]{8}\.\d+\.[\w-]+$/)
    expect(lines.length).toBe(5)
  })
  it('comes back whole from its text, from its link, and from a message around either', async () => {
    const text = await textOf(answer())
    const fragment = await answerFragment(answer())
    if (!fragment.ok) throw new Error(fragment.message)
    for (const pasted of [
      text,
      `${text}\n\nSent from the train`,
      fragment.value,
      `Here: https://example.org/tool/${fragment.value}.`,
      `Here is it\nhttps://example.org/${fragment.value}\nbye`,
    ])
      expect(await readAnswer(pasted), pasted).toEqual({ ok: true, value: answer() })
  })
  it('comes back from a mail that was quoted and broken into lines', async () => {
    const text = await textOf(answer())
    const broken = text
      .split('\n')
      .flatMap((line) => line.match(/.{1,70}/g) ?? [])
      .map((line) => `> ${line}`)
      .join('\r\n')
    expect(await readAnswer(`On Friday Jo wrote:\r\n${broken}\r\n\r\nThank you!`)).toEqual({
      ok: true,
      value: answer(),
    })
  })
  it('without a code, or with a broken one, is refused in words', async () => {
    const text = await textOf(answer())
    expect(await readAnswer('I like the yellow one')).toEqual({
      ok: false,
      message: 'There is no answer in this text: its last line or its link is missing.',
    })
    for (const cut of [text.slice(0, -1), text.slice(0, -30), text.replace(/.(?=.{9}$)/, '-')])
      expect(await readAnswer(cut)).toMatchObject({ ok: false, message: /not whole/ })
  })
  it('without a choice says so', async () => {
    expect(await textOf(answer({ chosen: null, note: '', from: '' }))).toMatch(
      /^Pedicel answer to “Window-sill bowl”\nI have not chosen a palette\.\npedicel-answer:/,
    )
  })
  it('belongs to its design in whatever palette, under whatever title, for however many tables', () => {
    let design = bowl()
    expect(answerFits(answer(), design)).toBe('same')
    design = applyEdit(design, { do: 'set-palette', palette: answer().chosen! })
    design = applyEdit(design, { do: 'set-setting', set: { copies: 3, date: null } })
    design = applyEdit(design, { do: 'set-title', title: 'Another name' })
    expect(answerFits(answer(), design)).toBe('same')
  })
  it('says when the design has changed since, and when it is another', () => {
    const moved = applyEdit(bowl(), { do: 'shift-stems', ids: ['s1'], by: [1, 0, 0] })
    expect(answerFits(answer(), moved)).toBe('changed')
    expect(answerFits(answer(), applyEdit(bowl(), { do: 'set-vessel', set: { height: 90 } }))).toBe('changed')
    expect(answerFits(answer(), { ...moved, title: 'Another name' })).toBe('other')
  })
  it('that was written before, with a check sum of 32 bits, is read and still finds its design', async () => {
    // Written by the first version, of the design of these tests.
    const old =
      '1.10aa9e3a.FctRCkBAEAbgq-h_HlpJMkdwAXllF1tjpuzKg9xdvvfvgQ8pbgpG2_XeuaYGIccsAYwxqre7TFGkmO0WENbTDjAGA2HZLQUF6yVCUMv_mUKq8H4'
    const read = await readAnswer(`pedicel-answer:${old}`)
    expect(read).toMatchObject({ ok: true, value: { design: '579d0031', note: 'Yes.' } })
    if (!read.ok) return
    expect(answerFits(read.value, bowl())).toBe('same')
    const moved = applyEdit(bowl(), { do: 'shift-stems', ids: ['s1'], by: [1, 0, 0] })
    expect(answerFits(read.value, moved)).toBe('changed')
  })
  it('is told apart by 80 bits, and its link grows by few letters for it', async () => {
    expect(fingerprint(bowl())).toMatch(/^[0-9a-f]{20}$/)
    const length = async (design: string): Promise<number> => {
      const made = await answerFragment(answer({ design }))
      return made.ok ? made.value.length : Number.NaN
    }
    const more = (await length(fingerprint(bowl()))) - (await length(fingerprint(bowl()).slice(0, 8)))
    expect(more).toBeLessThanOrEqual(20)
  })
  it('cut at any letter or with any one changed: refused in words, never another answer', async () => {
    const text = await textOf(answer())
    const start = text.indexOf('pedicel-answer:')
    for (let i = start; i < text.length; i++)
      for (const broken of [
        text.slice(0, i),
        `${text.slice(0, i)}${text[i] === 'x' ? 'y' : 'x'}${text.slice(i + 1)}`,
      ]) {
        const read = await readAnswer(broken)
        expect(read.ok, broken.slice(start)).toBe(false)
        expect(read.ok || read.message).toMatch(
          /^(It is not whole|There is no answer in this text|It was made by a newer)/,
        )
      }
    expect(await readAnswer(text.slice(0, -9))).toMatchObject({ message: /it ends after \d+ of its \d+ letters/ })
  })
  it('of any words comes back as it was', async () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 60 })
    await fc.assert(
      fc.asyncProperty(words, words, fc.option(palettes), async (title, note, chosen) => {
        const given = answer({ title, note, chosen })
        expect(await readAnswer(await textOf(given))).toEqual({ ok: true, value: given })
      }),
      { numRuns: 80 },
    )
  })
})
