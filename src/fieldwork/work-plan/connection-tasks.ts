import type { NodeValues, WiringValues } from '../../electrical/index.js'
import { landingPanel } from '../../project/facts.js'
import type { PlanSystem } from './plan-system.js'

const amps = (value: number): string => `${Number(value.toFixed(2))} A`

/** What lands where, and the rule that lets it in: of the panel, or of every busbar on the way to the service. */
export function connectionTasks(values: WiringValues, { project }: PlanSystem): string[] {
  const { panel, distribution } = values
  const { connection, distribution: stated } = project.electrical ?? {}
  if (stated === undefined)
    return [
      `panel: rule ${panel.rule} ${verdict(panel.complies)} with ${amps(panel.inverter_a)} of inverters; breaker where the drawings have it`,
    ]
  const busbars = distribution.filter(({ kind, inverter_a: sourcesA }) => kind === 'panel' && sourcesA > 0)
  return [
    ...landingTask(values, connection?.kind ?? 'load_side_breaker', landingPanel(project.electrical).id),
    ...busbars.map(
      (node) =>
        `${node.name}: rule ${node.governs ?? 'none'} ${verdict(node.complies)} with ${amps(node.inverter_a)} of sources`,
    ),
    ...distribution.filter(({ kind }) => kind === 'tap').flatMap((tap) => tapTask(values, tap)),
  ]
}

const verdict = (complies: boolean): string => (complies ? 'holds' : 'FAILS')

function landingTask({ distribution, circuits }: WiringValues, kind: string, panelId: string): string[] {
  if (kind !== 'load_side_breaker') return []
  const name = distribution.find(({ id }) => id === panelId)?.name ?? panelId
  const combined = circuits.find((circuit) => circuit.kind === 'ac_combined_output')
  const landing = combined === undefined ? circuits.filter((circuit) => circuit.kind.startsWith('ac_')) : [combined]
  return landing.map(
    ({ id, breaker_a: ratingA }) =>
      `${id} lands on its ${ratingA === null ? 'breaker' : `${ratingA} A breaker`} in ${name}, nowhere else, where the drawings have it`,
  )
}

function tapTask({ conductors }: WiringValues, tap: NodeValues): string[] {
  const row = conductors.find(({ tag, circuits }) => tag.startsWith('T') && circuits.includes(tap.id))
  if (row === undefined) return []
  const size = row.size_awg.includes('kcmil') ? row.size_awg : `${row.size_awg} AWG`
  return [
    `${tap.name} (${row.tag}): ${size} ${row.material}, at most ${row.length_ft ?? '?'} ft to ${tap.main_a === null ? 'its device' : `its ${tap.main_a} A device`}`,
  ]
}
