import type { ReviewValues, Sign } from '../../fieldwork/index.js'
import type { Section } from '../../report/index.js'

/** Kinds of sign in words. */
export const SIGN_NAMES: Readonly<Record<Sign['kind'], string>> = {
  outage: 'outage',
  snow: 'snow',
  string_or_inverter: 'string or inverter',
  module: 'module',
  level_drop: 'lower stretch',
  low_level: 'low level',
  shade: 'shade',
  soiling: 'dirt',
  degradation: 'ageing',
  clipping: 'power limit',
  trips: 'trips',
  clock: 'clock',
  daylight_saving: 'daylight saving',
  unit: 'unit',
  meter_reset: 'meter exchanged',
}

/** Signs with their days, chances and losses; nothing where there are none. */
export function signSection({ signs }: ReviewValues): Section[] {
  if (signs.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Signs of trouble, the dearest first',
      columns: [
        { heading: 'Sign' },
        { heading: 'From' },
        { heading: 'To' },
        { heading: 'Chance', unit: '%' },
        { heading: 'Lost', unit: 'kWh' },
        { heading: 'Lost', unit: 'USD' },
        { heading: 'Where' },
      ],
      rows: signs.map((sign) => [
        SIGN_NAMES[sign.kind],
        sign.from,
        sign.lasts ? `${sign.to}, lasts` : sign.to,
        100 * sign.probability,
        sign.lost_kwh,
        sign.lost_usd,
        sign.where,
      ]),
    },
  ]
}
