import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { FleetJob } from '../../fleet/index.js'
import type { LoadedProject } from '../../project/index.js'
import { StageError, type Result } from '../../worksheet/index.js'
import { FileError } from '../errors.js'
import { csvTable, renderCsv, renderJson, writeWhole, type Report } from '../output/index.js'
import { errnoWords } from '../output/errno.js'
import { placeText } from '../place-text.js'
import type { CommandContext } from '../subcommand.js'
import type { FleetPlan } from './fleet-work.js'

export interface WrittenReport {
  readonly stage: string
  readonly report: Report
}

/**
 * Writes the files of one project into a folder of its own, each whole or not at all.
 *
 * @returns Their paths under the output folder.
 * @throws FileError when one is there already and may not be replaced, or with the system's reason.
 */
export async function writeProjectFiles(
  { name }: FleetJob,
  plan: FleetPlan,
  loaded: LoadedProject,
  reports: readonly WrittenReport[],
): Promise<string[]> {
  const below = name.split('/').map(folderName).join('/')
  const folder = join(plan.outputFolder ?? '.', below)
  makeFolder(folder)
  const written: string[] = []
  const write = (file: string, content: string | Uint8Array): void => {
    writeWhole(join(folder, file), content, plan.force)
    written.push(`${below}/${file}`)
  }
  const bill = reports.find(({ stage }) => stage === 'bom')?.report
  const shopping = bill === undefined ? undefined : csvTable(bill)
  if (plan.write.includes('results')) {
    for (const { stage, report } of reports) write(`${stage}.json`, renderJson(report, around(plan, loaded)))
  }
  if (plan.write.includes('bom') && shopping !== undefined) write('bom.csv', renderCsv(shopping))
  if (plan.write.includes('packet')) write('packet.pdf', await drawPacket(plan, loaded, reports))
  return written
}

/** The packet; of a design that fails, what there is, with the stamp of a draft. */
async function drawPacket(
  { tool, allowOutside }: FleetPlan,
  loaded: LoadedProject,
  reports: readonly WrittenReport[],
): Promise<string | Uint8Array> {
  const { run } = await import('./draw-permit.js')
  const earlier = new Map<string, Result<unknown>>(reports.map(({ stage, report }) => [stage, report.result]))
  const context: CommandContext = {
    args: [loaded.path],
    tool,
    project: () => Promise.resolve(loaded),
    earlier: (stage) => Promise.resolve(earlier.get(stage)),
    progress: () => undefined,
  }
  const draw = async (draft: boolean): Promise<string | Uint8Array> => {
    const outcome = await run(context, { size: '11x17', draft, allowOutside })
    if (!('document' in outcome)) throw new Error('a packet without a document')
    return outcome.document
  }
  try {
    return await draw(false)
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    return draw(true)
  }
}

function around({ tool }: FleetPlan, loaded: LoadedProject) {
  return {
    tool,
    project: { title: loaded.project.title, digest: loaded.digest },
    locate: (path: string) => placeText(loaded, path),
    showWork: false,
  }
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new FileError(`cannot make the folder ${folder}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
}

/** One step of a name as the name of a folder on any system; never one that leads upwards. */
function folderName(text: string): string {
  const plain = text.replaceAll(/[^\p{L}\p{N}._-]+/gu, '_').slice(0, 100)
  return /^\.*$/u.test(plain) ? `_${plain}` : plain
}
