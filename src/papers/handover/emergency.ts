import { rapidShutdownRules } from '../../tables/nec/index.js'
import { listModuleGroups, lookUp } from '../../project/index.js'
import type { SwitchingStep } from '../../tables/fieldwork/index.js'
import type { HandoverInput } from './handover-input.js'
import type { EmergencySheet } from './handover-values.js'

const INITIATORS = {
  service_disconnect: 'the main breaker of the house (service disconnect)',
  pv_disconnect: 'the PV disconnect',
  switch: 'its own switch, marked RAPID SHUTDOWN',
} as const

/** What stays live, what turns it off, and where it all is. What is not stated is not made up. */
export function emergencySheet(input: HandoverInput): EmergencySheet {
  const { project } = input
  const { parties } = project
  const named = (role: string, party: { name: string; phone?: string } | undefined): string[] =>
    party === undefined ? [] : [`${role}: ${party.name}, ${party.phone ?? 'telephone not stated'}`]
  return {
    address: project.site.address ?? 'address not stated (site.address)',
    shut_down: shutDown(input),
    where: places(input),
    stays_live: staysLive(input),
    call: [
      'Emergency: 911',
      ...named('Utility', parties?.utility),
      ...named('Electrician', parties?.electrician ?? parties?.installer),
      ...named('Owner', parties?.owner),
    ],
  }
}

function shutDown({ project, wire }: HandoverInput): string[] {
  const rule = rapidShutdownRules.find(({ edition }) => edition === wire?.edition)
  const { initiator, initiator_outdoors: outdoors } = project.electrical?.rapid_shutdown ?? {}
  if (rule === undefined)
    return [
      `no rapid shutdown by ${wire?.edition ?? 'an edition that is not known'}`,
      'turn off the PV disconnect, then the main breaker',
    ]
  if (initiator === undefined) return ['rapid-shutdown initiator not stated (electrical.rapid_shutdown.initiator)']
  const place = outdoors === true ? ', outside, within reach' : outdoors === false ? ', not outside' : ''
  return [
    `turn off ${INITIATORS[initiator]}${place}`,
    `wait ${rule.timeS} s`,
    ...(initiator === 'service_disconnect' ? [] : ['then the main breaker of the house, as for any fire']),
  ]
}

function places({ project }: HandoverInput): EmergencySheet['where'] {
  const disconnects = Object.entries(project.electrical?.disconnects ?? {}).map(
    ([id, { kind, location, lockable }]): readonly [string, string] => [
      `Disconnect ${id} (${kind.replaceAll('_', ' ')})`,
      `${location ?? 'place not stated'}${lockable === true ? ', can be locked' : ''}`,
    ],
  )
  const arrays = listModuleGroups(project).map(({ id, array, modules, azimuthDeg }): readonly [string, string] => [
    `Array ${id}: ${modules} modules`,
    `roof plane ${array.roof_plane}, facing ${compass(azimuthDeg)}`,
  ])
  const units = Object.entries(project.inverter_units ?? {}).map(([id, unit]): readonly [string, string] => [
    `Inverter ${id}`,
    lookUp(project.equipment.inverters, unit.inverter, 'inverter').name ?? unit.inverter,
  ])
  return [...disconnects, ...arrays, ...units]
}

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const

export function compass(azimuthDeg: number): string {
  return COMPASS[Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8] ?? 'north'
}

function staysLive({ project, wire }: HandoverInput): string[] {
  const rule = rapidShutdownRules.find(({ edition }) => edition === wire?.edition)
  const groups = listModuleGroups(project)
  const hasStrings = groups.some(({ conversion }) => conversion.kind === 'string')
  const hasUnits = groups.some(({ conversion }) => conversion.kind === 'module_level')
  const highestV = Math.max(0, ...(wire?.strings ?? []).map(({ voc_cold_v: volts }) => volts))
  const upTo = highestV > 0 ? `, up to ${highestV.toFixed(0)} V` : ''
  const inside = project.electrical?.rapid_shutdown?.inside_boundary
  const lines = [
    'modules and the leads on them, whenever there is light: by day, in floodlight, by the light of a fire',
  ]
  if (hasUnits) lines.push('the DC leads from each module to the inverter behind it, under the modules')
  if (hasStrings && rule === undefined)
    lines.push(`the DC conductors from the array to the inverter${upTo}, also after everything is turned off`)
  if (hasStrings && rule !== undefined) {
    if (inside === 'module_level' && rule.insideVoltage !== undefined)
      lines.push(`conductors within the array: up to ${rule.insideVoltage.limitV} V after ${rule.timeS} s`)
    else lines.push(`conductors within the array${upTo}, also after rapid shutdown`)
    lines.push(
      `conductors beyond the array: ${rule.outsideLimit} or less after ${rule.timeS} s; longer if a part has failed`,
    )
  }
  lines.push('service conductors and the line side of the main breaker, until the utility cuts them')
  lines.push(
    'never cut or part DC connectors, never step on or break modules; with water keep the distance that the fire service has for live parts',
  )
  return lines
}

/** The steps of switching on or off that a system has. */
export function stepsFor(steps: readonly SwitchingStep[], { project }: HandoverInput): string[] {
  const kinds = new Set(listModuleGroups(project).map(({ conversion }) => conversion.kind))
  return steps
    .filter(({ only }) => {
      if (only === 'strings') return kinds.has('string')
      return only !== 'module_level' || !kinds.has('string')
    })
    .map(({ says }) => says)
}
