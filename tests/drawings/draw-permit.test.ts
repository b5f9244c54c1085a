import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { sealed } from '../../src/seal/index.js'
import { ensureBuilt, gablewattWarm } from '../cli/binary.js'
import { microHouse } from './demo-packet.js'
import { flat, pagesOf } from './pdf-text.js'
import { one, pointsOf, readDxf, type DxfRecord } from './read-dxf.js'
import type { Spot } from './read-sheet.js'

describe('draw-permit', () => {
  const folder = mkdtempSync(join(tmpdir(), 'permit-'))
  const at = (name: string) => join(folder, name)
  const pagesIn = async (name: string) => await pagesOf(new Uint8Array(readFileSync(at(name))))

  beforeAll(() => {
    ensureBuilt()
    writeFileSync(at('house.yaml'), stringify(microHouse()))
    const { site_plan: _, ...unfinished } = microHouse()
    writeFileSync(at('unfinished.yaml'), stringify(unfinished))
    writeFileSync(at('broken.yaml'), stringify(microHouse({ documents: ['house.yaml'] })))
  }, 70_000)

  afterAll(() => rmSync(folder, { recursive: true }))

  test('writes the packet and each sheet as SVG', async () => {
    const run = await gablewattWarm(['draw-permit', at('house.yaml'), '--out', at('packet.pdf'), '--svg', at('sheets')])
    expect([run.exitCode, run.stderr.includes('wrote')]).toEqual([0, true])
    const pages = await pagesIn('packet.pdf')
    expect(pages.length).toBe(readdirSync(at('sheets')).length)
    expect([pages[0]?.widthPt, pages[0]?.heightPt]).toEqual([1224, 792])
    expect(readFileSync(join(at('sheets'), 'A-101.svg'), 'utf8')).toContain('width="17in" height="11in"')
  })

  test('writes each sheet as DXF too, mounts and modules where space-mounts has them', async () => {
    const out = ['--out', at('cad.pdf'), '--dxf', at('cad')]
    const run = await gablewattWarm(['draw-permit', at('house.yaml'), ...out])
    expect(run.exitCode).toBe(0)
    expect(readdirSync(at('cad'))).toEqual(readdirSync(at('sheets')).map((name) => name.replace('.svg', '.dxf')))
    const told = await gablewattWarm(['space-mounts', at('house.yaml'), '--json'])
    const { values } = JSON.parse(told.stdout) as {
      values: Record<'mounts' | 'rails', { plane: string; x_in: number; y_in: number; length_in: number }[]>
    }
    const file = readDxf(readFileSync(join(at('cad'), 'A-101.dxf'), 'utf8'))
    const [plane] = values.mounts.map((each) => each.plane)
    const placesOf = (type: string, is: (record: DxfRecord) => boolean) =>
      file.entities.filter((record) => record.type === type && is(record)).map((record) => pointsOf(record, 10)[0])
    const near = (points: readonly (Spot | undefined)[], x: number, y: number): boolean =>
      points.some((each) => each !== undefined && Math.hypot(each.x - x, each.y - y) < 0.01)
    const mounts = placesOf('INSERT', (record) => one(record, 2) === 'PV-MOUNT')
    const own = values.mounts.filter((each) => each.plane === plane)
    expect(mounts.length).toBe(own.length)
    for (const { x_in: x, y_in: y } of own) expect(near(mounts, x, y)).toBe(true)
    const rails = placesOf('LINE', (record) => one(record, 8) === 'E-PVAR-RAIL')
    for (const { x_in: x, y_in: y } of values.rails.filter((each) => each.plane === plane))
      expect(near(rails, x, y)).toBe(true)
  })

  test('leaves what is there already, and writes nothing then', async () => {
    mkdirSync(at('held'))
    writeFileSync(join(at('held'), 'E-601.dxf'), 'mine')
    const run = await gablewattWarm(['draw-permit', at('house.yaml'), '--out', at('held.pdf'), '--dxf', at('held')])
    expect([run.exitCode, run.stderr.includes('E-601.dxf: the file exists already')]).toEqual([3, true])
    expect(readdirSync(at('held'))).toEqual(['E-601.dxf'])
    expect(readFileSync(join(at('held'), 'E-601.dxf'), 'utf8')).toBe('mine')
    expect(readdirSync(folder)).not.toContain('held.pdf')
  })

  test('is the same to the byte in another time zone', async () => {
    const run = await gablewattWarm(['draw-permit', at('house.yaml'), '--out', at('east.pdf')], {
      env: { TZ: 'Asia/Tokyo' },
    })
    expect(run.exitCode).toBe(0)
    expect(readFileSync(at('east.pdf')).equals(readFileSync(at('packet.pdf')))).toBe(true)
  })

  test('draws on A3 and on letter', async () => {
    for (const [size, width, height] of [
      ['A3', 1190.55, 841.89],
      ['letter', 792, 612],
    ] as const) {
      const run = await gablewattWarm(['draw-permit', at('house.yaml'), '--size', size, '--out', at(`${size}.pdf`)])
      expect(run.exitCode).toBe(0)
      for (const page of await pagesIn(`${size}.pdf`)) {
        expect(page.widthPt).toBeCloseTo(width, 1)
        expect(page.heightPt).toBeCloseTo(height, 1)
      }
    }
  })

  test('is stopped by an error and says what is wrong', async () => {
    const run = await gablewattWarm(['draw-permit', at('unfinished.yaml'), '--out', at('no.pdf')])
    expect(run.exitCode).toBe(2)
    expect(run.stderr).toContain('the packet is not drawn, because one check fails')
    expect(run.stderr).toContain('there is no site plan, so sheet C-101 cannot be drawn')
    expect(readdirSync(folder)).not.toContain('no.pdf')
  })

  test('is stopped by a check that fails, with 1, and writes nothing', async () => {
    const small = ['--set', 'electrical.panel.bus_a=60', '--set', 'electrical.panel.main_a=60']
    const run = await gablewattWarm(['draw-permit', at('house.yaml'), ...small, '--out', at('no.pdf')])
    expect(run.exitCode).toBe(1)
    expect(run.stderr).toMatch(/^error: the packet is not drawn, because .*\n {2}- electrical\./u)
    expect(run.stderr).toContain('  fix: Mend them, or draw what there is with --draft.')
    expect(run.stdout).toBe('')
    expect(readdirSync(folder)).not.toContain('no.pdf')
  })

  test('draws a draft that says what fails, and ends with 1', async () => {
    const run = await gablewattWarm(['draw-permit', at('unfinished.yaml'), '--draft', '--out', at('draft.pdf')])
    expect(run.exitCode).toBe(1)
    const pages = await pagesIn('draft.pdf')
    for (const page of pages) expect(flat(page.text)).toContain('DRAFT - NOT FOR PERMIT')
    expect(flat(pages[0]?.text ?? '')).toContain('there is no site plan, so sheet C-101 cannot be drawn')
  })

  test('names a document that is no PDF', async () => {
    const run = await gablewattWarm(['draw-permit', at('broken.yaml'), '--out', at('no.pdf')])
    expect([run.exitCode, run.stderr]).toEqual([3, "error: document 'house.yaml' is not a PDF\n"])
  })

  test('the audit: text, JSON, CSV, and exit code 1 where the authority asks for what is missing', async () => {
    const csv = await gablewattWarm(['draw-permit', at('house.yaml'), '--audit', '--csv'])
    expect(csv.exitCode).toBe(0)
    expect(csv.stdout.split(/\r?\n/u)[0]).toBe('point,asks,asked_by,state,sheets,what,supplied_by')
    expect(csv.stdout).toContain('MISSING,,parcel number: not stated,owner')
    writeFileSync(at('authority.yaml'), 'format: gablewatt-authority/1\nname: Sampletown (invented)\npaper: letter\n')
    writeFileSync(at('asked.yaml'), stringify({ ...microHouse(), permit: { authority: 'authority.yaml' } }))
    const json = await gablewattWarm(['draw-permit', at('asked.yaml'), '--audit', '--json'])
    expect(json.exitCode).toBe(1)
    const { stage, values } = JSON.parse(json.stdout)
    expect([stage, values.authority.name, values.expedited]).toEqual(['audit', 'Sampletown (invented)', null])
    const text = await gablewattWarm(['draw-permit', at('asked.yaml'), '--audit'])
    expect(text.stdout).toContain('Missing')
    // The paper of the authority is that of the sheets.
    const drawn = await gablewattWarm([
      'draw-permit',
      at('asked.yaml'),
      '--out',
      at('asked.pdf'),
      '--report',
      at('r.pdf'),
    ])
    expect(drawn.exitCode).toBe(0)
    expect((await pagesIn('asked.pdf'))[0]?.widthPt).toBe(792)
    expect((await pagesIn('r.pdf'))[0]?.widthPt).toBe(792)
  })

  test('a wrong file of the authority is told with its place, and nothing is written', async () => {
    writeFileSync(at('wrong.yaml'), 'format: gablewatt-authority/1\nname: x\nnot_asked: [elevatio]\n')
    writeFileSync(at('misled.yaml'), stringify({ ...microHouse(), permit: { authority: 'wrong.yaml' } }))
    const run = await gablewattWarm(['draw-permit', at('misled.yaml'), '--out', at('none.pdf')])
    expect(run.exitCode).toBe(2)
    expect(run.stderr).toContain(
      "wrong.yaml:3:13  not_asked.0  'elevatio' is no point of the common list; did you mean 'elevation'?",
    )
    expect(readdirSync(folder)).not.toContain('none.pdf')
  })

  test('formats without --audit, and files with it, are refused', async () => {
    for (const args of [
      ['--json'],
      ['--csv'],
      ['--audit', '--svg', at('s')],
      ['--audit', '--draft'],
      ['--audit', '--report', at('q.pdf')],
    ])
      expect((await gablewattWarm(['draw-permit', at('house.yaml'), ...args])).exitCode).toBe(2)
  })

  test('an issue is kept and the next one compared with it', async () => {
    const kept = await gablewattWarm([
      'draw-permit',
      at('house.yaml'),
      '--out',
      at('first.pdf'),
      '--result',
      at('a.json'),
    ])
    expect(kept.exitCode).toBe(0)
    const same = await gablewattWarm(['draw-permit', at('house.yaml'), '--out', at('no2.pdf'), '--since', at('a.json')])
    expect([same.exitCode, same.stderr.includes('the issues are not listed')]).toEqual([2, true])
    const revisions = [
      { number: 'A', date: '2026-03-02', text: 'For permit' },
      { number: 'B', date: '2026-04-01', text: 'Panel renamed' },
    ]
    const base = microHouse({ document: { date: '2026-03-02', revisions } })
    const next = {
      ...base,
      electrical: { ...base.electrical, panel: { ...base.electrical?.panel, name: 'House panel' } },
    }
    writeFileSync(at('next.yaml'), stringify(next))
    const run = await gablewattWarm([
      'draw-permit',
      at('next.yaml'),
      '--out',
      at('second.pdf'),
      '--since',
      at('a.json'),
    ])
    expect(run.exitCode).toBe(0)
    expect(run.stderr).toContain('E-601 changed since revision A: clouds round ')
    const text = (await pagesIn('second.pdf')).map((page) => flat(page.text)).join(' ')
    expect(text).toContain('Panel renamed')
    const record = readFileSync(at('a.json'), 'utf8')
    const { seal: _, ...content } = JSON.parse(record) as { seal: string; sheets: object[] }
    const remade = (change: object): string => JSON.stringify(sealed({ ...content, ...change }))
    for (const [text, words] of [
      [record.replace('"revision": "A"', '"revision": "B"'), 'its seal does not fit'],
      [remade({ sheets: 5 }), 'is a damaged result of a packet'],
      [remade({ sheets: [...content.sheets, { id: 7 }] }), 'is a damaged result of a packet'],
      [remade({ sheets: content.sheets.map((sheet) => ({ ...sheet, texts: { x: 1e9 } })) }), 'is a damaged result'],
      [
        remade({ sheets: content.sheets.map((sheet) => ({ ...sheet, figures: { x: [[0, 1]] } })) }),
        'is a damaged result',
      ],
    ] as const) {
      writeFileSync(at('damaged.json'), text)
      const args = ['draw-permit', at('next.yaml'), '--out', at('no3.pdf'), '--since', at('damaged.json')]
      const refused = await gablewattWarm(args)
      expect([refused.exitCode, refused.stderr.includes(words)]).toEqual([2, true])
    }
  })

  test('answers to comments are a sheet, and the sheets that they name have to be there', async () => {
    const comments = (sheet: string) =>
      `format: gablewatt-comments/1\ncomments:\n  - { number: '1', comment: Show the vent, answer: Shown, sheet: ${sheet} }\n`
    writeFileSync(at('good.yaml'), comments('A-101'))
    const run = await gablewattWarm([
      'draw-permit',
      at('house.yaml'),
      '--out',
      at('answered.pdf'),
      '--comments',
      at('good.yaml'),
    ])
    expect(run.exitCode).toBe(0)
    const pages = (await pagesIn('answered.pdf')).map((page) => flat(page.text))
    expect(
      pages.filter((page) => page.includes('Answers to the comments') && page.includes('Show the vent')),
    ).toHaveLength(1)
    expect(pages[0]).toContain('Answers to comments')
    writeFileSync(at('stray.yaml'), comments('A-109'))
    const stray = await gablewattWarm([
      'draw-permit',
      at('house.yaml'),
      '--out',
      at('no4.pdf'),
      '--comments',
      at('stray.yaml'),
    ])
    expect(stray.exitCode).toBe(2)
    expect(stray.stderr).toContain("stray.yaml:3:66  comments.0.sheet  'A-109' is no sheet of this packet")
    expect(readdirSync(folder)).not.toContain('no4.pdf')
  })
})
