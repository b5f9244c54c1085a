import type { WiringValues } from '../../electrical/index.js'
import type { Inverter, Project, UtilityApplication } from '../../project/index.js'
import { invertersOf, TOTALS } from '../totals.js'

/** A kind of inverter with its number. */
export interface InverterKind {
  readonly id: string
  readonly inverter: Inverter
  readonly count: number
}

/** What the stages came to; what could not run is undefined. */
export interface ApplicationStages {
  readonly wire?: WiringValues | undefined
  readonly yearKwh?: number | undefined
  /** Use of a year, kWh, with the key that it comes from. */
  readonly use?: { readonly kwh: number; readonly from: string } | undefined
}

/** What the fields of an application are answered from. */
export interface ApplicationFacts extends ApplicationStages {
  readonly project: Project
  readonly stated: UtilityApplication
  readonly inverters: readonly InverterKind[]
  /** Rated AC output of all inverters and rated power of all modules, kW. */
  readonly acKw: number
  readonly dcKw: number
  /** Their ratio of real to apparent power, as stated under electrical.power_factor. */
  readonly powerFactor: number | undefined
}

/** @param project With the modules counted that fit. */
export function applicationFacts(project: Project, stages: ApplicationStages): ApplicationFacts {
  return {
    ...stages,
    project,
    stated: project.utility_application ?? {},
    inverters: mergedKinds(invertersOf(project)),
    acKw: TOTALS.total_ac_kw.of(project),
    dcKw: TOTALS.total_dc_kw.of(project),
    powerFactor: project.electrical?.power_factor,
  }
}

function mergedKinds(kinds: readonly InverterKind[]): InverterKind[] {
  const merged = new Map<string, InverterKind>()
  for (const kind of kinds) merged.set(kind.id, { ...kind, count: kind.count + (merged.get(kind.id)?.count ?? 0) })
  return [...merged.values()]
}

/** One answer for all kinds of inverter: said once when all agree, else by kind; undefined when one of them is silent. */
export function ofInverters(
  { inverters }: ApplicationFacts,
  of: (inverter: Inverter) => string | undefined,
): string | undefined {
  const answers = inverters.map(({ id, inverter }) => ({ name: inverter.name ?? id, answer: of(inverter) }))
  const said = answers.flatMap(({ answer }) => answer ?? [])
  if (said.length === 0 || said.length < answers.length) return undefined
  const [first] = said
  if (new Set(said).size === 1) return first
  return answers.map(({ name, answer }) => `${name}: ${answer}`).join('; ')
}

/** A number to at most so many digits after the point, without zeros at its end. */
export const digits = (value: number, decimals: number): number => Number(value.toFixed(decimals))
