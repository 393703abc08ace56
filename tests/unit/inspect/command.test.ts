import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { newArrangement, writeArrangement } from '../../../src/arrangement/index.ts'
import { plantIds } from '../../../src/catalogue/index.ts'
import { readOptions, USAGE } from '../../../src/inspect/options.ts'

const ROOT = join(import.meta.dirname, '../../..')
let folder = ''
const at = (name: string): string => join(folder, name)

const run = (...words: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'src/inspect/command.ts', ...words],
    { cwd: ROOT, encoding: 'utf8' },
  )
  return {
    status,
    stderr,
    lines: stdout
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line)),
  }
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'inspect-'))
  const plant = [...plantIds][0] as string
  const stem = {
    id: 's1',
    plant,
    role: 'focal',
    colour: { slot: 0 },
    openness: 1,
    mouth: [0, 0],
    tip: [0, 0, 90],
    bend: 0,
    piece: 'whole',
  }
  const good = { ...newArrangement(), title: 'Good', stems: [stem, { ...stem, id: 's2', tip: [40, -30, 80] }] }
  writeFileSync(at('b-good.json'), JSON.stringify(good))
  writeFileSync(at('a-bad.json'), JSON.stringify({ ...good, stems: [{ ...stem, tip: [0, 0, 'high'] }], form: 'heap' }))
  writeFileSync(at('c-empty.JSON'), writeArrangement({ ...newArrangement(), title: 'No stems yet' }))
  writeFileSync(at('bytes.bin'), Uint8Array.from([0x7b, 0xff, 0xfe, 0x7d]))
  copyFileSync(at('bytes.bin'), at('notes.txt'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the inspect command', () => {
  it('reads a good, a bad and a missing file, a line each', () => {
    const { status, lines, stderr } = run(
      at('b-good.json'),
      at('a-bad.json'),
      at('nowhere.json'),
      at('bytes.bin'),
      '--copies',
      '12',
    )
    expect(stderr).toBe('')
    expect(status).toBe(1)
    expect(lines).toHaveLength(4)
    const [good, bad, missing, bytes] = lines
    expect(Object.keys(good)).toEqual(['file', 'title', 'readings', 'stemList', 'purchase'])
    expect(good.title).toBe('Good')
    for (const id of [
      'focal-prominence',
      'negative-space',
      'palette-harmony',
      'proportion',
      'visual-balance',
      'sight-line',
    ]) {
      expect(good.readings[id].score === null || (good.readings[id].score >= 0 && good.readings[id].score <= 100)).toBe(
        true,
      )
      expect(good.readings[id].values).toBeTypeOf('object')
      expect(Array.isArray(good.readings[id].advice)).toBe(true)
    }
    expect(good.readings.proportion.values.heightRatio).toBeGreaterThan(0)
    expect(good.stemList.flatMap((row: { ids: string[] }) => row.ids)).toEqual(['s1', 's2'])
    expect(good.purchase).toMatchObject({ copies: 12, lines: [{ pieces: 24 }] })
    expect(bad).toEqual({
      file: at('a-bad.json'),
      error: 'form: expected one of round, low, airy, vertical, triangle, crescent, cascade, got "heap"',
      problems: [
        { path: 'form', message: expect.any(String) },
        { path: 'stems[0].tip[2]', message: 'expected a number in mm, got "high"' },
      ],
    })
    expect(missing).toEqual({ file: at('nowhere.json'), error: 'there is no such file' })
    expect(bytes.error).toBe('expected UTF-8, got other bytes')
  })

  it('reads every design in a folder, and one without stems gives no score that it can’t explain', () => {
    const { status, lines } = run(folder)
    expect(status).toBe(1)
    expect(lines.map((l) => l.file)).toEqual([at('a-bad.json'), at('b-good.json'), at('c-empty.JSON')])
    expect(lines[2].purchase).toMatchObject({ copies: 1, lines: [], total: 0 })
    expect(lines[2].readings['focal-prominence'].score).toBeNull()
    expect(lines[2].readings['focal-prominence'].notApplicable).not.toBe('')
  })

  it('ends well when all is well', () => {
    expect(run(at('b-good.json')).status).toBe(0)
  })

  it.each<[string[], string]>([
    [[], USAGE],
    [['--copies', 'many', 'x.json'], '--copies takes a whole number from 1 to 10000, got "many"'],
  ])('says what is wrong with the words %j, and ends with 2', (words, said) => {
    const { status, lines, stderr } = run(...words)
    expect({ status, lines, stderr }).toEqual({ status: 2, lines: [], stderr: `${said}\n` })
  })
})

describe('the words after the command', () => {
  it.each<[string[], unknown]>([
    [['a.json', 'b.json'], { files: ['a.json', 'b.json'], copies: null }],
    [['--copies', '24', 'a.json'], { files: ['a.json'], copies: 24 }],
    [['a.json', '--copies=3'], { files: ['a.json'], copies: 3 }],
    [['--', '--copies'], { files: ['--copies'], copies: null }],
  ])('%j is understood', (words, options) => {
    expect(readOptions(words)).toEqual(options)
  })

  it.each([['0'], ['10001'], ['-3'], ['1.5'], ['1e3'], ['NaN'], [''], ['12 ']])('no number of copies: %j', (copies) => {
    expect(readOptions(['a.json', '--copies', copies])).toHaveProperty('wrong')
    expect(readOptions(['a.json', `--copies=${copies}`])).toHaveProperty('wrong')
  })

  it('a number left out, and an option that there is not, are said', () => {
    expect(readOptions(['a.json', '--copies'])).toEqual({
      wrong: '--copies takes a whole number from 1 to 10000, got nothing',
    })
    expect(readOptions(['--quiet', 'a.json'])).toEqual({ wrong: expect.stringContaining('no option --quiet') })
  })
})

describe('the samples that come with the tool', () => {
  it.each(['window-sill-bowl', 'twenty-four-cups', 'orchard-supper'])('%s reads without a problem', (name) => {
    const file = join(ROOT, 'public/samples', `${name}.json`)
    expect(readFileSync(file, 'utf8').length).toBeGreaterThan(100)
    expect(run(file)).toMatchObject({ status: 0, lines: [{ file }] })
  })
})
