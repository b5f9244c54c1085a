import { plainNumber } from '../layout/index.js'
import { requiredLabels } from '../labels/required-labels.js'
import { isAc, type StorageValues } from '../../electrical/index.js'
import {
  allOn,
  hasWords,
  missing,
  notApplicable,
  present,
  sheetsOf,
  type AuditFacts,
  type Judge,
  type Needle,
  type Verdict,
} from './verdict.js'

type WiringOf = NonNullable<AuditFacts['input']['wire']>['values']

/** A point that cannot be met without the wiring. */
const withWiring =
  (judge: (facts: AuditFacts, wiring: WiringOf) => Verdict): Judge =>
  (facts) =>
    facts.input.wire === undefined
      ? missing('the electrical part of the project is not complete')
      : judge(facts, facts.input.wire.values)

/** Points of the electrical sheets. */
export const ELECTRICAL_POINTS: Readonly<Record<string, Judge>> = {
  'one-line': withWiring((facts, wiring) =>
    allOn(facts, 'E', [
      ['diagram', /ONE-LINE|SINGLE-LINE/u],
      ['array', /MODULES? /u],
      ['conversion', /INVERTER|AC MODULE/u],
      ['panel', /MAIN PANEL|\bPANEL\b/u],
      ['meter', /\bMETER\b/u],
      ...(Object.values(facts.input.project.electrical?.disconnects ?? {}).some(({ kind }) => kind === 'pv_system')
        ? ([['disconnect', /PV SYSTEM DISCONNECT/u]] as const)
        : []),
      ...[...new Set(wiring.circuits.flatMap(({ breaker_a: rating }) => (rating === null ? [] : [rating])))].map(
        (rating): Needle => [`device of ${rating} A`, new RegExp(`\\b${rating} A\\b`, 'u')],
      ),
    ]),
  ),
  conductors: withWiring((facts, wiring) => {
    const verdict = allOn(
      facts,
      'E',
      wiring.circuits.flatMap(({ id, segments }) =>
        segments.flatMap((segment): Needle[] => [
          [`conductor of ${id} in ${segment.id}`, `${id} ${segment.id.replaceAll('_', ' ')} ${segment.size_awg}`],
          [`raceway of ${id} in ${segment.id}`, raceway(segment.raceway.type)],
        ]),
      ),
    )
    if (verdict.state !== 'present') return verdict
    const sections = wiring.circuits.reduce((sum, { segments }) => sum + segments.length, 0)
    return present(
      verdict.sheets,
      `conductors and raceways in all ${sections} sections of ${wiring.circuits.length} circuits`,
    )
  }),
  grounding: withWiring((facts) => {
    const electrodes = facts.input.project.electrical?.service?.bonding?.electrodes
    const drawn = allOn(facts, 'E', [
      ['equipment ground', /EQUIPMENT GROUND/u],
      ['conductor of the electrode', /ELECTRODE CONDUCTOR/u],
      ['bonding of modules and rails', /RAILS AND MODULE|RAILS AND FRAMES/u],
    ])
    if (drawn.state !== 'present') return drawn
    return electrodes === undefined
      ? missing('electrodes that are there: not stated (electrical.service.bonding.electrodes)')
      : drawn
  }),
  'service-ratings': withWiring((facts, { panel }) => {
    const rating = facts.input.project.electrical?.service?.rating_a
    return allOn(facts, 'GE', [
      ['service', rating === undefined ? undefined : `Service ${rating} A`],
      ['busbar', panel.bus_a === null ? undefined : `${panel.bus_a} A bus`],
      ['main breaker', panel.main_a === null ? undefined : `${panel.main_a} A main breaker`],
    ])
  }),
  'connection-rule': withWiring((facts, { panel }) =>
    allOn(facts, 'GE', [
      ['side', /BACKFED BREAKER|SUPPLY SIDE|FEEDER/u],
      ['rule', `${panel.rule}, `],
      ['section', panel.section],
    ]),
  ),
  'rapid-shutdown': withWiring((facts) => {
    const stated = facts.input.project.electrical?.rapid_shutdown
    if (facts.input.project.codes?.electrical === 'NEC 2011') return notApplicable('NEC 2011 asks for none')
    if (stated?.initiator === undefined) return missing('initiator: not stated (electrical.rapid_shutdown.initiator)')
    return allOn(facts, 'E', [
      ['kind and limit', /RAPID SHUTDOWN: /u],
      ['place of the initiator', /RAPID SHUTDOWN SWITCH|INITIATOR/u],
    ])
  }),
  'electrical-calculation': withWiring((facts, wiring) =>
    allOn(facts, 'E', [
      ['calculation', 'Electrical calculation'],
      ['cold voltage', /COLD|LOWEST EXPECTED AMBIENT/u],
      ['required current', /REQUIRED/u],
      ['ampacity', 'Ampacity along each circuit'],
      ...wiring.circuits.map(({ id, total_voltage_rise_pct: rise, voltage_rise_limit_pct: most }): Needle => [
        `voltage change of ${id}`,
        `${plainNumber(rise)} of ${plainNumber(most)} %`,
      ]),
      ['raceway fill', /\d+ OF \d+ %/u],
    ]),
  ),
  strings: withWiring((facts, wiring) => {
    const strings = wiring.circuits.filter((circuit) => !isAc(circuit))
    if (strings.length === 0) return notApplicable('every module has an inverter of its own; no DC circuits leave it')
    return allOn(facts, 'E', [
      ['modules in each string', /DC VOLTAGES, BY STRING/u],
      ...wiring.strings.map((each): Needle => [`string ${each.id}`, each.id]),
    ])
  }),
  branches: withWiring((facts, wiring) => {
    const branches = wiring.circuits.filter(({ kind }) => kind === 'ac_branch')
    if (branches.length === 0) return notApplicable('no branches of inverters behind modules')
    return allOn(facts, 'E', [
      ...branches.map(({ id, inverters }): Needle => [
        `inverters on ${id}`,
        new RegExp(`(?:BRANCH ${id.toUpperCase()} |${id.toUpperCase()} AC BRANCH ${inverters} )`, 'u'),
      ]),
      ['length of home runs', /\d+ FT/u],
    ])
  }),
  'disconnect-rating': withWiring((facts) => {
    const disconnects = Object.entries(facts.input.project.electrical?.disconnects ?? {})
    if (disconnects.length === 0)
      return notApplicable(
        'no separate disconnect: the breaker in the panel parts the system (its rating stands on the diagram)',
      )
    const lacking = disconnects.filter(
      ([, { rating_a: rating, fused, breaker, interrupting_rating_a: interrupting }]) =>
        rating === undefined || ((fused === true || breaker === true) && interrupting === undefined),
    )
    if (lacking.length > 0)
      return missing(
        `rating or interrupting rating of ${lacking.map(([id]) => id).join(', ')}: not stated (electrical.disconnects)`,
      )
    return allOn(
      facts,
      'E',
      disconnects.map(([id, { rating_a: rating }]): Needle => [
        `rating of ${id}`,
        new RegExp(`DISCONNECT[^.]{0,20} ${rating} A`, 'u'),
      ]),
    )
  }),
  battery: (facts) => {
    const storage = facts.input.wire?.values.storage
    if (storage !== undefined) return storagePoint(facts, storage)
    return sheetsOf(facts, 'G').some((sheet) => hasWords(sheet, 'No batteries'))
      ? notApplicable('the packet is for a system without batteries, and the cover says so')
      : missing('battery: the cover does not say that there is none')
  },
  labels: withWiring((facts, wiring) => {
    const labels = requiredLabels(facts.input.project, wiring)
    const plates = sheetsOf(facts, 'E').filter((sheet) => hasWords(sheet, 'NEEDED: '))
    const counted = plates.reduce((sum, { words }) => sum + (words.match(/\b\d+ NEEDED: /gu) ?? []).length, 0)
    if (labels.length === 0) return missing('labels: none could be worked out')
    if (counted < labels.length) return missing(`labels: ${counted} of ${labels.length} are drawn`)
    return present(
      plates.map(({ id }) => id),
      `${labels.length} labels with words, place, size and colours`,
    )
  }),
}

/** How schedules call a raceway; those that are none by what stands there. */
function raceway(type: string): RegExp | string {
  return type === 'none' ? /NONE|TRUNK CABLE|CLIPPED|OPEN AIR|FREE AIR/u : type
}

/** Maker and energy, disconnect, backup, what is said of the places, the places on the plan, the data sheet. */
function storagePoint(facts: AuditFacts, storage: StorageValues): Verdict {
  const { project } = facts.input
  const open = storage.checks.filter(({ verdict }) => verdict === 'not_stated')
  const failing = storage.checks.filter(({ verdict }) => verdict === 'fail')
  const lacking = [
    ...failing.map(({ says }) => `fails: ${says}`),
    ...open.map(({ where }) => `not stated: ${where}`),
    ...(Object.values(project.site_plan?.equipment ?? {}).some(({ kind }) => kind === 'storage')
      ? []
      : ['no place of the units on the site plan (site_plan.equipment, kind: storage)']),
  ]
  if (lacking.length > 0) return missing(`battery: ${lacking.join('; ')}`)
  return allOn(facts, 'E', [
    ['unit', storage.name],
    ['energy', storage.nameplate_kwh === null ? undefined : `${plainNumber(storage.nameplate_kwh, 1)} kWh`],
    ['listing', 'UL 9540'],
    ['disconnect', /STORAGE DISCONNECT|DISCONNECT IN THE UNIT/u],
    ['place, alarms, vehicles', 'Storage: what was checked'],
    ...(storage.backup === null ? [] : [['isolating device', 'ISOLATING DEVICE'] as const]),
  ])
}
