import { inverterPath } from '../../project/index.js'
import { APPLICATION_LIMITS, APPLICATION_SOURCES, SIZE_LEVELS, STANDARD_FACTS } from '../../tables/utility/index.js'
import type { Finding } from '../../worksheet/index.js'
import { digits, type ApplicationFacts } from './application-facts.js'
import type { ApplicationField } from './application-values.js'

const KEY = 'utility_application'
type Check = (facts: ApplicationFacts) => readonly (Finding | undefined)[]

/** What is missing, as warnings, and what contradicts itself. */
export function applicationFindings(facts: ApplicationFacts, fields: readonly ApplicationField[]): Finding[] {
  const checked = CHECKS.flatMap((check) => check(facts)).filter((finding) => finding !== undefined)
  return [...checked, ...fields.flatMap(missingField)]
}

function missingField({ id, label, missing: key, supplied_by: who, state }: ApplicationField): Finding[] {
  if (state !== 'missing' || key === null) return []
  return [
    {
      severity: 'warning',
      id: 'application.field-missing',
      message: `the application asks for ${id} (${label}), and it is not stated`,
      where: key,
      source: APPLICATION_SOURCES.fields,
      fix: `State ${key}; supplied by: ${who}`,
    },
  ]
}

const levels: Check = ({ acKw, stated: { size_level_kw: levelKw } }) => {
  const over = (upToKw: number, name: string, source: Finding['source']): Finding | undefined =>
    acKw <= upToKw + 1e-9
      ? undefined
      : {
          severity: 'warning',
          id: 'application.above-level',
          message: `the rated ${digits(acKw, 3)} kW ac are above the ${upToKw} kW of the ${name}; another procedure with other forms and times holds`,
          where: '',
          ...(source === undefined ? {} : { source }),
          fix: 'Ask the utility which procedure this size takes; the process times of this sheet are not those',
        }
  if (levelKw !== undefined) return [over(levelKw, "utility's short procedure", undefined)]
  return SIZE_LEVELS.map(({ name, upToKw, source }) => over(upToKw, name, source))
}

const exports: Check = ({ project, acKw, stated: { operating_mode: mode, export_limit_kw: limitKw } }) => [
  mode === undefined || mode === 'export' || project.electrical?.power_control !== undefined
    ? undefined
    : {
        severity: 'error',
        id: 'application.no-power-control',
        message: `the application says ${mode === 'non_export' ? 'no export' : 'limited export'}, and the project has no power control system that could hold it`,
        where: `${KEY}.operating_mode`,
        source: APPLICATION_SOURCES.fields,
        fix: 'State electrical.power_control with its certificate, or apply for export',
      },
  limitKw === undefined || mode === 'limited_export'
    ? undefined
    : {
        severity: 'error',
        id: 'application.export-limit-without-mode',
        message: `an export limit of ${limitKw} kW is stated, and the operating mode is ${mode ?? 'not stated'}`,
        where: `${KEY}.export_limit_kw`,
        fix: 'State operating_mode: limited_export, or take the limit out',
      },
  limitKw === undefined || mode !== 'limited_export' || limitKw < acKw
    ? undefined
    : {
        severity: 'warning',
        id: 'application.export-limit-idle',
        message: `the export limit of ${limitKw} kW is not below the rated ${digits(acKw, 3)} kW ac, so that it limits nothing`,
        where: `${KEY}.export_limit_kw`,
        fix: 'State the limit of the utility, or apply for export',
      },
]

const energy: Check = ({ yearKwh, use, stated: { size_limit_pct: statedPct } }) => {
  const limitPct = statedPct ?? APPLICATION_LIMITS.energyOfUsePct
  if (yearKwh === undefined || use === undefined || use.kwh <= 0) return []
  const sharePct = (yearKwh / use.kwh) * 100
  if (sharePct <= limitPct) return []
  return [
    {
      severity: statedPct === undefined ? 'warning' : 'error',
      id: 'application.energy-above-use',
      message: `the system gives ${yearKwh.toFixed(0)} kWh a year, ${sharePct.toFixed(0)} % of the ${use.kwh.toFixed(0)} kWh that the house uses; ${statedPct === undefined ? `many utilities allow no more than ${limitPct} %` : `the utility allows ${limitPct} %`}`,
      where: statedPct === undefined ? use.from : `${KEY}.size_limit_pct`,
      source: APPLICATION_SOURCES.energyOfUse,
      fix: 'Ask the utility for its limit, show future use, or take fewer modules',
    },
  ]
}

const existing: Check = ({ project, stated: { stage, existing_generation_kw: existingKw } }) => {
  const sources = Object.keys(project.electrical?.distribution?.sources ?? {})
  const isThere = (existingKw ?? 0) > 0 || sources.length > 0
  const what = (existingKw ?? 0) > 0 ? `${existingKw} kW of generation` : `the source ${sources[0] ?? ''}`
  if (stage === 'new' && isThere)
    return [contradiction('stage', `the application says new, and ${what} is there already`, 'State stage: addition')]
  if (stage === 'addition' && existingKw === 0)
    return [
      contradiction(
        'existing_generation_kw',
        'the application says addition, and 0 kW of generation are there already',
        'State what is there, or stage: new',
      ),
    ]
  return []
}

const owners: Check = ({ stated: { ownership, third_party_owner: owner } }) =>
  ownership === 'owned' && owner !== undefined
    ? [
        contradiction(
          'third_party_owner',
          `the customer owns the system, and ${owner.name} is named as its third-party owner`,
          'Take third_party_owner out, or state leased or power_purchase',
        ),
      ]
    : []

const dates: Check = ({ stated: { installation_date: built, in_service_date: runs } }) =>
  built !== undefined && runs !== undefined && runs < built
    ? [
        contradiction(
          'in_service_date',
          `operation on ${runs} is before the installation on ${built}`,
          'State a day of operation after the installation, the inspection and the permission',
        ),
      ]
    : []

const insurance: Check = ({ stated: { insurance_limit_usd: hasUsd, insurance_required_usd: needsUsd } }) =>
  hasUsd !== undefined && needsUsd !== undefined && hasUsd < needsUsd
    ? [
        contradiction(
          'insurance_limit_usd',
          `the liability limit of ${hasUsd.toLocaleString('en-US')} USD is below the ${needsUsd.toLocaleString('en-US')} USD that the utility asks for`,
          'Raise the limit, or ask the utility for a waiver',
        ),
      ]
    : []

const contradiction = (key: string, message: string, fix: string): Finding => ({
  severity: 'error',
  id: 'application.contradiction',
  message,
  where: `${KEY}.${key}`,
  fix,
})

const listings: Check = ({ inverters }) =>
  inverters.flatMap(({ id, inverter: { name, listing, ieee1547_normal: normal, ieee1547_abnormal: abnormal } }) => {
    const path = inverterPath(id)
    const called = name ?? id
    const supplements = STANDARD_FACTS.find((fact) => fact.id === 'supplements')?.source
    const isListed = listing !== undefined && /\bUL 1741\b/u.test(listing)
    const findings: Finding[] = []
    if (listing !== undefined && !(isListed && /\bSB\b/u.test(listing)))
      findings.push({
        severity: 'warning',
        id: 'application.listing-not-sb',
        message: `the listing of ${called} is ${listing}; utilities ask for UL 1741${isListed ? ' Supplement SB, state by state' : ''}`,
        where: `${path}.listing`,
        ...(supplements === undefined ? {} : { source: supplements }),
        fix: 'Look at the certificate, and ask the utility which listing it takes',
      })
    if ((normal ?? 'B') !== 'B' || (abnormal ?? 'III') !== 'III')
      findings.push({
        severity: 'note',
        id: 'application.category-unusual',
        message: `${called} is of category ${normal ?? 'not stated'} normal and ${abnormal ?? 'not stated'} abnormal; B and III are usual for PV`,
        where: path,
        source: APPLICATION_SOURCES.categories,
        fix: 'Ask the utility which categories it takes',
      })
    return findings
  })

const faults: Check = ({ inverters }) =>
  inverters.flatMap(({ id, inverter: { ac_current_a: ratedA, max_fault_current_a: faultA } }) =>
    ratedA !== undefined && faultA !== undefined && faultA < ratedA
      ? [
          {
            severity: 'error',
            id: 'application.contradiction',
            message: `the fault current of ${faultA} A is below the rated current of ${ratedA} A`,
            where: `${inverterPath(id)}.max_fault_current_a`,
            fix: 'Look at the data sheet again',
          },
        ]
      : [],
  )

const CHECKS: readonly Check[] = [exports, existing, owners, dates, insurance, faults, energy, levels, listings]
