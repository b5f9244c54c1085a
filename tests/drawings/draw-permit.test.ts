import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
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
})
