import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { runHouse } from '../../src/house/index.js'
import { preparePacket } from '../../src/packet/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { microHouse } from './demo-packet.js'

const folder = mkdtempSync(join(tmpdir(), 'fit-'))
afterAll(() => rmSync(folder, { recursive: true }))

async function prepared(project: Project, size: 'letter' | '11x17') {
  const loaded = loadProject({ path: '-', text: stringify(project), baseFolder: folder })
  return await preparePacket(loaded, runHouse(loaded), { size })
}

/** The largest letters that an authority may ask for, on the smallest paper: the title strip alone has no room for its names. */
const tooLarge = (): Project => microHouse({ drawings: { least_text_in: 0.15 } })

describe('a packet whose sheets have no room for their texts', () => {
  test('is stopped, and each finding names its sheets, their paper and a text', async () => {
    const { errors } = await prepared(tooLarge(), 'letter')
    expect(errors.length).toBeGreaterThan(0)
    for (const { severity, id, where, message } of errors) {
      expect([severity, id, where]).toEqual(['error', 'drawings.does-not-fit', 'drawings'])
      expect(message).toMatch(/^sheets? [A-Z]-\d+.* on letter paper (?:has|have) no room for '/u)
    }
  })

  test('tells a text that many sheets have no room for once', async () => {
    const { errors } = await prepared(tooLarge(), 'letter')
    const together = errors.filter(({ message }) => message.startsWith('sheets '))
    expect(together).toHaveLength(1)
    const told = errors
      .flatMap(({ message }) => message.split(" no room for '")[1]?.split(/', '|' and |'$/u) ?? [])
      .filter((text) => text !== '' && !text.endsWith(' more'))
    const counts = told.map((text) => told.filter((each) => each === text).length)
    expect(Math.max(...counts)).toBeLessThan(3)
    // A sheet that lacks room for a text of its own is named for itself.
    expect(errors.some(({ message }) => message.startsWith('sheet '))).toBe(true)
  })

  test('is not stopped on usual paper with usual letters', async () => {
    expect((await prepared(microHouse(), '11x17')).errors).toEqual([])
  })

  test('names what fails of the design first: nothing is drawn for it', async () => {
    const { site_plan: _, ...unplanned } = tooLarge()
    const { errors } = await prepared(unplanned, 'letter')
    expect(errors.length).toBeGreaterThan(0)
    expect(errors.map(({ id }) => id)).not.toContain('drawings.does-not-fit')
  })
})
