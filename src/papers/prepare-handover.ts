import type { WiringValues } from '../electrical/index.js'
import type { House } from '../house/index.js'
import type { Commissioning, Project } from '../project/index.js'
import { countFitted } from '../roof/index.js'
import { StageError, type Result } from '../worksheet/index.js'
import type * as Handover from './handover/index.js'
import type { HandoverInput, HandoverValues, SerialNumber, TableText } from './handover/index.js'
import type { PreparedPaper } from './prepare-application.js'
import { sealPaper, type PaperInput, type SealWish } from './seal-paper.js'
import { speakerOf } from './words/index.js'

/** What the person gives beside the project. */
export interface HandoverWishes extends SealWish {
  /** Day of the tests, year-month-day; wins over commissioning.date. */
  readonly date?: string | undefined
  /** Cell temperature that `runHouse` was given as a wish, deg C. */
  readonly cellC?: number | undefined
  /** Light on the modules to expect, W/m2. */
  readonly irradianceWM2?: number | undefined
  /** Table of serial numbers: kind, unit, serial. */
  readonly serials?: TableText | undefined
  /** Table of readings: string, and keys under commissioning.strings. */
  readonly readings?: TableText | undefined
}

/**
 * The record of the tests and the hand-over file of a house.
 *
 * @param house The stages of the project, of `runHouse`, with the wish `cellC` where a temperature is given.
 * @throws ProjectError for a table that cannot be read, StageError when a stage cannot run or a unit is not there.
 */
export async function prepareHandover(
  loaded: PaperInput,
  house: House,
  wishes: HandoverWishes = {},
): Promise<PreparedPaper<HandoverValues>> {
  const [papers, { checkPaper, paperMarkdown, paperPdf }] = await Promise.all([
    import('./handover/index.js'),
    import('./pages/index.js'),
  ])
  const project = countFitted(loaded.project)
  const work = await house.work()
  const { values: energy } = await house.yield()
  const { values: arrangement } = await house.roof()
  const measured = withReadings(project, wishes.readings, papers)
  const units = { module: energy.modules.map(({ id }) => id), inverter: papers.inverterUnits({ project, energy }) }
  const input: HandoverInput = {
    project,
    work: work.values,
    energy,
    arrangement,
    wire: await wiringOf(house),
    measured,
    serials: allSerials(measured, wishes.serials, units, papers),
    date: wishes.date,
    cellC: wishes.cellC,
    irradianceWM2: wishes.irradianceWM2,
  }
  const { draftWhileMadeUp, tellMadeUp, withoutMadeUp } = await import('./draft.js')
  const built = await withoutMadeUp(papers.handoverOf(input, work))
  const result = tellMadeUp(built, loaded, 'handover')
  const plain = papers.handoverPaper(input, built.values, built.findings)
  const paper = draftWhileMadeUp(plain, loaded, 'handover', speakerOf('en'))
  return {
    result,
    isDraft: paper.stamp !== undefined,
    markdown: () => paperMarkdown(paper),
    pdf: async (size) => {
      const { readFonts } = await import('../packet/index.js')
      checkPaper(paper, 'title')
      const draw = async (imprint?: string) => await paperPdf(paper, size, readFonts(), imprint)
      const seal = {
        digest: loaded.digest,
        tool: wishes.tool,
        draft: paper.stamp !== undefined,
        name: 'handover',
      } as const
      return await sealPaper(draw, seal, { yield: house.yield, wire: house.wire })
    },
  }
}

type Papers = typeof Handover

/** Readings of a table win over those of the project. */
function withReadings(project: Project, table: TableText | undefined, papers: Papers): Commissioning {
  const stated = project.commissioning ?? {}
  if (table === undefined) return stated
  const read = papers.readReadings(table, papers.stringIds(project))
  const ids = new Set([...Object.keys(stated.strings ?? {}), ...Object.keys(read)])
  const strings = [...ids].map((id) => [id, { ...stated.strings?.[id], ...read[id] }] as const)
  return { ...stated, strings: Object.fromEntries(strings) }
}

/** Serial numbers of the project and of a table; the units of both have to be there. */
function allSerials(
  measured: Commissioning,
  table: TableText | undefined,
  units: Parameters<Papers['readSerials']>[1],
  papers: Papers,
): SerialNumber[] {
  const stated = papers.statedSerials(measured)
  for (const { kind, unit } of stated)
    if (kind !== 'other' && !units[kind].includes(unit))
      throw new StageError(
        `commissioning.serials.${kind}s`,
        `there is no ${kind} '${unit}' in this project`,
        `Name it as estimate-yield --json does; the first is ${units[kind][0] ?? 'none'}`,
      )
  const read = table === undefined ? [] : papers.readSerials(table, units)
  const keys = new Set(read.map(({ kind, unit }) => `${kind} ${unit}`))
  return [...stated.filter(({ kind, unit }) => !keys.has(`${kind} ${unit}`)), ...read]
}

async function wiringOf(house: House): Promise<WiringValues | undefined> {
  try {
    const result: Result<WiringValues> = await house.wire()
    return result.values
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}
