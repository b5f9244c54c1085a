import { SWITCH_OFF_ORDER } from '../../tables/fieldwork/index.js'
import { stepsFor } from './emergency.js'
import type { HandoverInput } from './handover-input.js'
import type { OwnerSummary } from './handover-values.js'

/** What the owner keeps: energy to expect, what to look at, whom to call. Energy is rounded down. */
export function ownerSummary(input: HandoverInput): OwnerSummary {
  const { project, energy, work } = input
  const { parties } = project
  const roles = [
    ['Installer', parties?.installer],
    ['Electrician', parties?.electrician],
    ['Utility', parties?.utility],
    ['Building department', parties?.authority],
  ] as const
  return {
    months: energy.monthly.map(({ month, ac_kwh: kwh }) => {
      const week = work.first_week.find((each) => each.month === month)
      return {
        month,
        expected_kwh: Math.floor(kwh),
        week: week === undefined ? '-' : `${Math.floor(week.p10_kwh)} to ${Math.floor(week.p90_kwh)} kWh`,
      }
    }),
    year_kwh: energy.monthly.reduce((sum, { ac_kwh: kwh }) => sum + Math.floor(kwh), 0),
    look_at: [
      'the monitoring or the inverter once a month: every module or string reports, no message of a fault',
      'a month far below its line without snow or dark weather: ask the installer; review-output tells weather from faults',
      'the array from the ground after storms; hanging leads and broken glass are not touched',
      'labels, disconnect and shutdown switch stay free and readable',
    ],
    switch_off: stepsFor(
      SWITCH_OFF_ORDER.filter(({ measuring }) => measuring !== true),
      input,
    ),
    call: roles.flatMap(([role, party]): OwnerSummary['call'] =>
      party === undefined
        ? []
        : [[role, [party.name, party.phone, party.email].filter((each) => each !== undefined).join(', ')]],
    ),
    warranties: warrantiesOf(project),
  }
}

/** Warranties as they are given; no length is made up. */
function warrantiesOf({ proposal }: HandoverInput['project']): string[] {
  return Object.values(proposal?.warranties ?? {}).map(
    ({ covers, years, given_by: by, transferable }) =>
      `${covers}: ${years} years, by ${by}${transferable === true ? ', passes to the next owner' : transferable === false ? ', does not pass to the next owner' : ''}`,
  )
}
