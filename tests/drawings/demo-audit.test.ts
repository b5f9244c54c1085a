import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { runHouse } from '../../src/house/index.js'
import { preparePacket } from '../../src/packet/index.js'
import { loadProject } from '../../src/project/index.js'

const EXAMPLES = new URL('../../examples/', import.meta.url).pathname

/** The audit of the demo house, with these changes of its file. */
async function audited(overrides: readonly string[] = []) {
  const loaded = loadProject({ path: join(EXAMPLES, 'lark-hollow.yaml'), overrides })
  const house = runHouse(loaded)
  const { wishes, errors } = await preparePacket(loaded, house)
  expect(errors).toEqual([])
  return await house.audit(wishes)
}

describe('the packet of the demo house', () => {
  test('lacks nothing of what the published lists ask for', async () => {
    const { values, findings } = await audited()
    expect(values.points.filter(({ state }) => state === 'missing')).toEqual([])
    expect(values.present).toBeGreaterThan(40)
    expect(findings.map(({ id }) => id)).toEqual(['audit.no-authority'])
  })

  test('nor of what the invented office asks for', async () => {
    const { values, findings } = await audited(['permit.authority=authority.yaml'])
    expect(values.points.filter(({ state, required }) => state === 'missing' && required)).toEqual([])
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  test('has no sheet of the site plan for a note or two on letter paper', async () => {
    const loaded = loadProject({ path: join(EXAMPLES, 'lark-hollow.yaml') })
    const packet = await preparePacket(loaded, runHouse(loaded), { size: 'letter' })
    const { sheets } = await packet.draw(false)
    expect(sheets.filter(({ id }) => id.startsWith('C-')).map(({ id }) => id)).toEqual(['C-101'])
  })

  test('its papers are those that the script makes of the equipment file, and small', () => {
    const folder = mkdtempSync(join(tmpdir(), 'papers-'))
    execFileSync(process.execPath, [join(EXAMPLES, 'make-papers.mjs'), folder])
    const names = readdirSync(folder)
    expect(names.length).toBe(8)
    expect(readdirSync(join(EXAMPLES, 'papers')).toSorted()).toEqual(names.toSorted())
    for (const name of names) {
      const kept = readFileSync(join(EXAMPLES, 'papers', name))
      expect([name, Buffer.compare(readFileSync(join(folder, name)), kept)]).toEqual([name, 0])
      expect(kept.length).toBeLessThan(4000)
    }
    rmSync(folder, { recursive: true })
  })
})
