import { describe, expect, test } from 'vitest'
import { runHouse } from '../../src/house/index.js'
import { readPdfSeal } from '../../src/packet/index.js'
import { prepareApplication, prepareHandover, prepareProposal } from '../../src/papers/index.js'
import { loadProject, type LoadedProject } from '../../src/project/index.js'
import { pagesOf } from '../drawings/pdf-text.js'

const HOUSE = new URL('../../examples/fleet/springfield-whole-job.yaml', import.meta.url).pathname
const tool = 'gablewatt test'
/** One value for each paper alone, one of the roof that all rest on. */
const MADE_UP = ['structure.wind.basic_speed_mph', 'title', 'finance.discount_rate_pct', 'codes.electrical']
const confirmed = loadProject({ path: HOUSE })
const unconfirmed: LoadedProject = { ...confirmed, madeUp: MADE_UP }

const PAPERS = {
  proposal: async (loaded: LoadedProject) => {
    const paper = await prepareProposal(loaded, runHouse(loaded, { wishes: { payTheBom: true } }), { tool })
    return { ...paper, markdown: await paper.markdown() }
  },
  application: async (loaded: LoadedProject) => {
    const paper = await prepareApplication(loaded, runHouse(loaded), { tool })
    return { ...paper, markdown: paper.markdown(), pdf: async () => await paper.pdf('letter') }
  },
  handover: async (loaded: LoadedProject) => {
    const paper = await prepareHandover(loaded, runHouse(loaded), { tool })
    return { ...paper, markdown: paper.markdown(), pdf: async () => await paper.pdf('letter') }
  },
}

describe.each(Object.entries(PAPERS))('a paper on made-up values: %s', (name, prepare) => {
  test('is a draft on each page, in its seal and in its other forms, and lists them with their values', async () => {
    const { pdf, isDraft, markdown, result } = await prepare(unconfirmed)
    expect(isDraft).toBe(true)
    const bytes = await pdf()
    const pages = await pagesOf(bytes)
    expect(pages.map(({ text }) => text.includes('DRAFT - NOT TO BE HANDED OVER'))).toEqual(pages.map(() => true))
    const all = pages.map(({ text }) => text).join('\n')
    for (const text of [all, markdown.replaceAll('\\', '')]) {
      expect(text).toMatch(/structure\.wind: basic_speed_mph \d+ mph/u)
      expect(text).toMatch(/codes(?:\.|: )electrical NEC 20\d\d/u)
      expect(text.includes('discount_rate_pct')).toBe(name === 'proposal')
    }
    expect(markdown).toContain('DRAFT')
    expect(readPdfSeal(bytes)).toMatchObject({ isWhole: true, seal: { paper: name, draft: true } })
    const told = result.findings.filter(({ id }) => id.startsWith('project.made-up'))
    expect(told.map(({ where }) => where)).toEqual(['structure.wind', 'codes', ''])
  })

  test('is none once all is confirmed, nor without a tool sealed', async () => {
    const { pdf, isDraft, markdown } = await prepare(confirmed)
    expect([isDraft, markdown.includes('DRAFT')]).toEqual([false, false])
    const bytes = await pdf()
    expect((await pagesOf(bytes)).some(({ text }) => text.includes('DRAFT'))).toBe(false)
    expect(readPdfSeal(bytes)).toMatchObject({ seal: { draft: false, project: confirmed.digest } })
    // The same line as in the margin of a packet.
    const imprint = `${tool}, build ${readPdfSeal(bytes)?.seal.build}; project ${confirmed.digest.slice(0, 16)}; values `
    expect((await pagesOf(bytes)).filter(({ text }) => !text.includes(imprint))).toEqual([])
  })
})

describe('other forms of a draft', () => {
  test('the web page and Spanish say it too; without the name of the program there is no seal', async () => {
    const house = runHouse(unconfirmed, { wishes: { payTheBom: true } })
    const paper = await prepareProposal(unconfirmed, house, { language: 'es' })
    expect(await paper.html()).toMatch(/BORRADOR - NO SE DEBE ENTREGAR[\s\S]*structure\.wind/u)
    const bytes = await paper.pdf()
    expect((await pagesOf(bytes))[0]?.text).toContain('BORRADOR')
    expect(readPdfSeal(bytes)).toBeUndefined()
  })
})
