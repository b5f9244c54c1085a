import { landingPanel } from '../../../project/facts.js'
import { APPLICATION_LIMITS, APPLICATION_SOURCES } from '../../../tables/utility/index.js'
import { formatSource } from '../../../worksheet/index.js'
import { digits, type ApplicationFacts } from '../application-facts.js'
import { stated, type Answer, type FieldRule } from '../field-rule.js'

const SECTION = 'Connection'
const MODES = {
  export: 'export of all surplus',
  limited_export: 'limited export',
  non_export: 'no export',
} as const

const panelOf = ({ project }: ApplicationFacts): ReturnType<typeof landingPanel> => landingPanel(project.electrical)

/** How the system works with the grid and where it joins the house. */
export const CONNECTION_FIELDS: readonly FieldRule[] = [
  {
    id: 'operating_mode',
    row: 24,
    section: SECTION,
    label: 'Operating mode',
    askedBy: 'newer forms',
    who: 'customer and installer',
    key: 'utility_application.operating_mode',
    of: ({ stated: { operating_mode: mode, export_limit_kw: limitKw } }) =>
      stated(
        'utility_application.operating_mode',
        mode === undefined
          ? undefined
          : `${MODES[mode]}${mode === 'limited_export' && limitKw !== undefined ? `, at most ${limitKw} kW` : ''}`,
      ),
  },
  {
    id: 'export_limit_kw',
    row: 24,
    section: SECTION,
    label: 'Largest export',
    unit: 'kW',
    askedBy: 'newer forms',
    who: 'installer',
    key: 'utility_application.export_limit_kw',
    when: ({ stated: { operating_mode: mode } }) => mode === 'limited_export',
    of: (facts) => stated('utility_application.export_limit_kw', facts.stated.export_limit_kw),
  },
  {
    id: 'power_control',
    row: 24,
    section: SECTION,
    label: 'Power control system and its certificate',
    askedBy: 'newer forms',
    who: 'maker',
    key: 'electrical.power_control',
    of: ({ project, stated: { operating_mode: mode } }) => {
      const control = project.electrical?.power_control
      if (control === undefined)
        return mode === 'export' || mode === undefined
          ? { value: 'none', from: 'no electrical.power_control', none: true }
          : undefined
      return {
        value: `set to ${control.setting_a} A${control.document === undefined ? ', no certificate stated' : `, certificate ${control.document}`}`,
        from: 'electrical.power_control',
      }
    },
  },
  {
    id: 'service_a',
    row: 25,
    section: SECTION,
    label: 'Main service rating',
    unit: 'A',
    askedBy: 'all',
    who: 'electrician',
    key: 'electrical.service.rating_a',
    of: ({ project }) => stated('electrical.service.rating_a', project.electrical?.service?.rating_a),
  },
  {
    id: 'panel_bus_a',
    row: 25,
    section: SECTION,
    label: 'Busbar of the panel',
    unit: 'A',
    askedBy: 'all',
    who: 'electrician',
    key: 'electrical.panel.bus_a',
    of: (facts) => stated(`${panelOf(facts).where}.bus_a`, panelOf(facts).stated?.bus_a),
  },
  {
    id: 'panel_main_a',
    row: 25,
    section: SECTION,
    label: 'Main breaker',
    unit: 'A',
    askedBy: 'all',
    who: 'electrician',
    key: 'electrical.panel.main_a',
    of: (facts) => stated(`${panelOf(facts).where}.main_a`, panelOf(facts).stated?.main_a),
  },
  {
    id: 'connection',
    row: 26,
    section: SECTION,
    label: 'Point of connection',
    askedBy: 'all',
    who: 'electrician',
    key: 'electrical.connection.kind',
    of: (facts) => {
      const kind = facts.project.electrical?.connection?.kind
      if (kind === undefined) return undefined
      const panel = panelOf(facts).stated?.name ?? panelOf(facts).id
      const says = {
        load_side_breaker: `load side, backfed breaker in ${panel}`,
        feeder_tap: 'load side, tap of a feeder',
        supply_side: 'supply side, ahead of the service disconnect',
      }[kind]
      return { value: says, from: 'electrical.connection.kind' }
    },
  },
  {
    id: 'connection_breaker_a',
    row: 26,
    section: SECTION,
    label: 'Backfed breaker or overcurrent device',
    unit: 'A',
    askedBy: 'all',
    who: 'installer',
    key: 'electrical.connection.breaker_a',
    of: ({ project, wire }) =>
      stated('electrical.connection.breaker_a', project.electrical?.connection?.breaker_a) ??
      stated('size-wire, circuits', landingBreakers(wire)),
  },
  {
    id: 'disconnect',
    row: 27,
    section: SECTION,
    label: 'Lockable disconnect that the utility can reach',
    askedBy: 'many',
    who: 'installer',
    key: 'electrical.disconnects',
    of: ({ project }) => {
      const all = Object.entries(project.electrical?.disconnects ?? {}).filter(([, { kind }]) => kind === 'pv_system')
      const fits = all.find(([, { lockable, readily_accessible: reached }]) => lockable === true && reached === true)
      const [id, found] = fits ?? []
      if (id === undefined || found === undefined) return undefined
      const place = found.location === undefined ? 'place not stated' : found.location
      return {
        value: `yes: ${found.rating_a === undefined ? '' : `${found.rating_a} A, `}${place}`,
        from: `electrical.disconnects.${id}`,
      }
    },
    note: 'its maker and model as on its sheet',
  },
  {
    id: 'disconnect_distance_ft',
    row: 27,
    section: SECTION,
    label: 'Distance of the disconnect from the meter',
    unit: 'ft',
    askedBy: 'many',
    who: 'installer',
    key: 'utility_application.disconnect_near_meter_ft',
    of: distanceToMeter,
    note: `many utilities ask for ${APPLICATION_LIMITS.disconnectFromMeterFt} ft or less (${formatSource(APPLICATION_SOURCES.disconnect)})`,
  },
  {
    id: 'transformer_shared',
    row: 28,
    section: SECTION,
    label: 'Service transformer shared with other houses',
    askedBy: 'some',
    who: 'utility',
    key: 'utility_application.transformer_shared',
    of: (facts) => stated('utility_application.transformer_shared', facts.stated.transformer_shared),
  },
  {
    id: 'service_entry',
    row: 28,
    section: SECTION,
    label: 'Service comes',
    askedBy: 'some',
    who: 'customer',
    key: 'utility_application.service_entry',
    of: (facts) => stated('utility_application.service_entry', facts.stated.service_entry),
  },
]

/** Breakers of the circuits that land on the panel or ahead of it, as words. */
function landingBreakers(wire: ApplicationFacts['wire']): string | undefined {
  const circuits = wire?.circuits ?? []
  const shared = circuits.filter(({ kind }) => kind === 'ac_combined_output')
  const landing = shared.length > 0 ? shared : circuits.filter(({ kind }) => kind.startsWith('ac_'))
  const breakers = landing.flatMap(({ breaker_a: ratingA }) => (ratingA === null ? [] : [`${ratingA} A`]))
  return breakers.length === 0 ? undefined : breakers.join(', ')
}

function distanceToMeter({ project, stated: own }: ApplicationFacts): Answer | undefined {
  const pieces = Object.entries(project.site_plan?.equipment ?? {})
  const [, meter] = pieces.find(([, { kind }]) => kind === 'utility_meter') ?? []
  const [id, disconnect] = pieces.find(([, { kind }]) => kind === 'pv_disconnect') ?? []
  if (meter === undefined || disconnect === undefined || id === undefined)
    return stated('utility_application.disconnect_near_meter_ft', own.disconnect_near_meter_ft)
  const distanceFt = Math.hypot(meter.x_ft - disconnect.x_ft, meter.y_ft - disconnect.y_ft)
  return { value: digits(distanceFt, 1), from: `site_plan.equipment.${id} to the meter, in plan` }
}
