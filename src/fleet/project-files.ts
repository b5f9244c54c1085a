import { join } from 'node:path'
import { makeFolder, writeWhole } from '../files/index.js'
import type { House } from '../house/index.js'
import { shoppingList, type BomValues } from '../materials/index.js'
import { inWorker } from '../project/foreign/index.js'
import { placeText, type LoadedProject } from '../project/index.js'
import {
  renderCsv,
  renderJson,
  reportInCurrency,
  tableInCurrency,
  type Report,
  type ReportContext,
} from '../report/index.js'
import type { Finding } from '../worksheet/index.js'
import type { FleetPlan } from './plan.js'
import { writePapers, type ToldOfFile, type WriteFile } from './project-papers.js'
import type { FleetJob } from './types.js'

/** A stage that was worked out, as its file tells it. */
export type WorkedStage = Pick<Report, 'stage' | 'cautions' | 'result'>

/**
 * Writes the files of one project into a folder of its own, each whole or not at all.
 *
 * @param written Takes their paths under the output folder, as each is there.
 * @returns What the papers tell beside the stages.
 * @throws FileError when one is there already and may not be replaced, or with the system's reason.
 */
export async function writeProjectFiles(
  job: FleetJob,
  plan: FleetPlan,
  loaded: LoadedProject,
  { house, worked }: { readonly house: House; readonly worked: readonly WorkedStage[] },
  written: string[],
): Promise<readonly ToldOfFile[]> {
  if (plan.write.every((kind) => kind === 'price-list')) return []
  const below = job.name.split('/').map(folderName).join('/')
  const folder = join(plan.outputFolder ?? '.', below)
  makeFolder(folder)
  const write: WriteFile = (file, content) => {
    writeWhole(join(folder, file), content, plan.force)
    written.push(`${below}/${file}`)
  }
  const bill = worked.find(({ stage }) => stage === 'bom')?.result
  if (plan.write.includes('results')) {
    for (const stage of worked) {
      const told = reportInCurrency({ ...stage, title: '', sections: [] }, loaded.project.finance?.currency)
      write(`${stage.stage}.json`, renderJson({ ...stage, result: told.result }, around(plan, loaded)))
    }
  }
  if (plan.write.includes('bom') && bill !== undefined) {
    write(
      'bom.csv',
      renderCsv(tableInCurrency(shoppingList(bill.values as BomValues), loaded.project.finance?.currency)),
    )
  }
  const told = plan.write.includes('packet') ? await writePacket(plan, loaded, house, write) : []
  return [
    ...told.map((finding) => ({ stage: 'permit', finding })),
    ...(await writePapers(job, plan, loaded, house, write)),
  ]
}

async function writePacket(
  { allowOutside, tool, confined }: FleetPlan,
  loaded: LoadedProject,
  house: House,
  write: WriteFile,
): Promise<Finding[]> {
  const { preparePacket } = await import('../packet/index.js')
  const foreign = confined === true ? inWorker() : undefined
  const options = { size: '11x17', allowOutside, tool, foreign } as const
  const { errors, draw } = await preparePacket(loaded, house, options)
  const { pdf } = await draw(errors.length > 0)
  write('packet.pdf', pdf)
  return errors.length === 0 ? [] : [...errors.map(asFinding), drawnAsDraft(errors)]
}

/** What a packet lacks is no fault of the design; a check that only the packet makes is. */
function asFinding(error: Finding): Finding {
  return error.id.startsWith('permit.') ? { ...error, severity: 'warning' } : error
}

function drawnAsDraft(errors: readonly Finding[]): Finding {
  const first = errors.find(({ id }) => !id.startsWith('permit.')) ?? errors[0]
  const rest = errors.length > 1 ? ` and ${errors.length - 1} more` : ''
  return {
    severity: 'warning',
    id: 'permit.drawn-as-draft',
    message: `packet.pdf is a draft and stamped so, for ${first?.message ?? ''}${rest}`,
    where: first?.where ?? '',
    fix: 'Mend what is missing or fails, and run it again.',
  }
}

function around({ tool }: FleetPlan, loaded: LoadedProject): ReportContext {
  return {
    tool,
    project: { title: loaded.project.title, digest: loaded.digest },
    locate: (path: string) => placeText(loaded, path),
    showWork: false,
  }
}

/** One step of a name as the name of a folder on any system; never one that leads upwards. */
function folderName(text: string): string {
  const plain = text.replaceAll(/[^\p{L}\p{N}._-]+/gu, '_').slice(0, 100)
  return /^\.*$/u.test(plain) ? `_${plain}` : plain
}
