import type { House } from '../house/index.js'
import { prepareApplication, prepareHandover, prepareProposal, type PreparedPaper } from '../papers/index.js'
import type { LoadedProject } from '../project/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import type { FleetFileKind, FleetPlan } from './plan.js'
import type { FleetJob } from './types.js'

/** Puts a file into the folder of the project. */
export type WriteFile = (file: string, content: string | Uint8Array) => void

/** What is told beside the stages, with the paper that it is of. */
export interface ToldOfFile {
  readonly stage: string
  readonly finding: Finding
}

/**
 * Writes the papers of a house that people are handed. One that cannot be written is told and takes nothing away from the others.
 *
 * @throws FileError when a file is there already and may not be replaced, or with the system's reason.
 */
export async function writePapers(
  job: FleetJob,
  plan: FleetPlan,
  loaded: LoadedProject,
  house: House,
  write: WriteFile,
): Promise<ToldOfFile[]> {
  const told: ToldOfFile[] = []
  for (const { name, kinds, draw } of PAPERS) {
    if (!plan.write.some((kind) => kinds.includes(kind))) continue
    try {
      for (const finding of await draw(job, plan, loaded, house, write)) told.push({ stage: name, finding })
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      const { message, fix, where } = error
      const says = fix === '' ? message : `${message}; ${fix}`
      told.push({ stage: name, finding: { severity: 'error', id: `${name}.cannot-run`, message: says, where } })
    }
  }
  return told
}

type Draw = (
  job: FleetJob,
  plan: FleetPlan,
  loaded: LoadedProject,
  house: House,
  write: WriteFile,
) => Promise<readonly Finding[]>

const PAPERS: readonly { readonly name: string; readonly kinds: readonly FleetFileKind[]; readonly draw: Draw }[] = [
  {
    name: 'proposal',
    kinds: ['proposal', 'proposal-html'],
    draw: async (job, plan, loaded, house, write) => {
      const paper = await prepareProposal(loaded, house, { tool: plan.tool, customer: customerOf(job) })
      const findings = paper.result.findings.filter(({ id }) => id.startsWith('proposal.'))
      const errors = findings.filter(({ severity }) => severity === 'error')
      if (errors.length > 0) return [...findings, notWritten('proposal', errors)]
      if (plan.write.includes('proposal')) write('proposal.pdf', await paper.pdf())
      if (plan.write.includes('proposal-html')) write('proposal.html', await paper.html())
      return [...findings, ...asDraft('the proposal', paper.isDraft)]
    },
  },
  {
    name: 'application',
    kinds: ['application'],
    draw: async (_, { tool }, loaded, house, write) =>
      await drawPaper('application', await prepareApplication(loaded, house, { tool }), write),
  },
  {
    name: 'handover',
    kinds: ['handover'],
    draw: async (_, { tool }, loaded, house, write) =>
      await drawPaper('handover', await prepareHandover(loaded, house, { tool }), write),
  },
]

async function drawPaper(name: string, paper: PreparedPaper<unknown>, write: WriteFile): Promise<Finding[]> {
  write(`${name}.pdf`, await paper.pdf('letter'))
  return [
    // The paper itself marks what is missing, line by line.
    ...paper.result.findings.filter(({ id }) => id.startsWith(`${name}.`) && id !== 'application.field-missing'),
    ...asDraft(`${name}.pdf`, paper.isDraft),
  ]
}

const CUSTOMER = 'customer.'

/** The person's own columns about the customer, without their beginning; all others stay in their own books. */
function customerOf({ extra = {} }: FleetJob): Record<string, string> {
  const own = Object.entries(extra).filter(([heading]) => heading.startsWith(CUSTOMER))
  return Object.fromEntries(own.map(([heading, text]) => [heading.slice(CUSTOMER.length), text]))
}

function notWritten(name: string, errors: readonly Finding[]): Finding {
  const [first] = errors
  const rest = errors.length > 1 ? ` and ${errors.length - 1} more` : ''
  return {
    severity: 'warning',
    id: 'fleet.paper-not-written',
    message: `the ${name} is not written, for ${first?.message ?? ''}${rest}`,
    where: first?.where ?? '',
    fix: 'Mend what fails, and run it again.',
  }
}

function asDraft(file: string, isDraft: boolean): Finding[] {
  if (!isDraft) return []
  return [
    {
      severity: 'warning',
      id: 'fleet.paper-draft',
      message: `${file} is a draft and stamped so, as it rests on values that are made up; it lists them`,
      where: '',
      fix: 'Look each one up, state what is true and take its marker !made_up away.',
    },
  ]
}
