import { TOOLS, type ToolCondition } from '../../tables/materials/index.js'
import type { Need } from './need.js'
import type { TakeOffJob } from './take-off-job.js'

/** Tools that the job needs and that the person does not have. Without a list of tools owned none is counted, and a note says so. */
export function takeTools(job: TakeOffJob): Need[] {
  const { tools_owned: owned } = job.materials
  const rented = new Set(Object.keys(job.materials.rentals ?? {}))
  const needed = TOOLS.filter((tool) => applies(job, tool.neededFor) && !rented.has(tool.id))
  if (owned === 'all') return []
  if (owned === undefined) {
    job.worksheet.find({
      severity: 'note',
      id: 'materials.tools-not-counted',
      message: `no tool is counted, because the tools you have are not stated; the job needs ${needed.map((tool) => tool.id).join(', ')}`,
      where: 'materials.tools_owned',
      fix: 'State the tools you have, or all',
    })
    return []
  }
  const known = new Set<string>(TOOLS.map((tool) => tool.id))
  const strange = owned.filter((id) => !known.has(id))
  if (strange.length > 0)
    job.worksheet.find({
      severity: 'warning',
      id: 'materials.unknown-tool',
      message: `no job here needs a tool named ${strange.join(', ')}`,
      where: 'materials.tools_owned',
      fix: `Use the names ${[...known].join(', ')}`,
    })
  return needed
    .filter((tool) => !owned.includes(tool.id))
    .map((tool) => ({
      item: `tool.${tool.id}`,
      name: tool.name,
      group: 'tools',
      unit: 'each',
      quantity: 1,
      why: 'needed for this job and not among the tools owned (materials.tools_owned)',
    }))
}

function applies({ mounts, wiring }: TakeOffJob, condition: ToolCondition): boolean {
  const raceways = wiring?.raceways.flatMap(({ form, type }) => (form === 'raceway' ? [type] : [])) ?? []
  switch (condition) {
    case 'always':
      return true
    case 'rail':
      return mounts !== undefined
    case 'lag':
      return mounts?.fastener.into === 'rafter'
    case 'roof_screw':
      return mounts !== undefined && mounts.fastener.into !== 'seam'
    case 'wiring':
      return wiring !== undefined
    case 'raceway':
      return raceways.length > 0
    case 'emt':
      return raceways.includes('EMT')
    case 'metal_raceway':
      return ['EMT', 'IMC', 'RMC'].some((type) => raceways.includes(type))
    case 'pvc':
      return raceways.some((type) => type.startsWith('PVC'))
    case 'strings':
      return wiring?.circuits.some((circuit) => circuit.kind === 'dc_string') ?? false
  }
}
