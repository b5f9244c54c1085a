import { isAcModule, listModuleGroups, type Commissioning } from '../../project/index.js'
import type { HandoverInput } from './handover-input.js'
import type { SerialNumber } from './handover-values.js'

/** Every module and inverter of the house with its serial number, in the order of the roof; then what else was noted. */
export function serialNumbers({ project, energy, serials }: HandoverInput): SerialNumber[] {
  const known = new Map(serials.map(({ kind, unit, serial }) => [`${kind} ${unit}`, serial]))
  const of = (kind: SerialNumber['kind'], unit: string): SerialNumber => ({
    kind,
    unit,
    serial: known.get(`${kind} ${unit}`) ?? null,
  })
  return [
    ...energy.modules.map(({ id }) => of('module', id)),
    ...inverterUnits({ project, energy }).map((id) => of('inverter', id)),
    ...serials.filter(({ kind }) => kind === 'other'),
  ]
}

/** Names of the inverters: of units on a wall, and of the modules that have one behind them. An AC module is one thing. */
export function inverterUnits({ project, energy }: Pick<HandoverInput, 'project' | 'energy'>): string[] {
  const behind = new Set(
    listModuleGroups(project).flatMap(({ id, conversion }) =>
      conversion.kind === 'module_level' && !isAcModule(conversion.inverterId) ? [id] : [],
    ),
  )
  return [
    ...Object.keys(project.inverter_units ?? {}),
    ...energy.modules.filter(({ array }) => behind.has(array)).map(({ id }) => id),
  ]
}

/** Serial numbers that the project states. */
export function statedSerials({ serials }: Commissioning): SerialNumber[] {
  const of = (kind: SerialNumber['kind'], map: Readonly<Record<string, string>> | undefined): SerialNumber[] =>
    Object.entries(map ?? {}).map(([unit, serial]) => ({ kind, unit, serial }))
  return [...of('module', serials?.modules), ...of('inverter', serials?.inverters), ...of('other', serials?.other)]
}
