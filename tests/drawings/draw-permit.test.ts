import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { ensureBuilt, gablewattWarm } from '../cli/binary.js'
import { microHouse } from './demo-packet.js'
import { flat, pagesOf } from './pdf-text.js'

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
