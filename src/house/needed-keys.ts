/** A key that a stage cannot do without, and where one finds its value. */
export interface NeededKey {
  /** Dotted path; of several that stand for each other the usual one. */
  readonly path: string
  readonly find: string
  /** Keys that may stand in its place. */
  readonly or?: readonly string[]
}

const BUILDING_DEPARTMENT = 'ask the building department'
const CODE: NeededKey = {
  path: 'codes.electrical',
  find: 'edition of the electrical code: ask the building department',
}
const TREE = ['electrical.distribution']

/** Keys by stage, in the order in which one comes past them. What runs without one of them does not miss it. */
export const NEEDED_KEYS: Readonly<Record<string, readonly NeededKey[]>> = {
  yield: [
    { path: 'equipment.modules', find: 'data sheet of the module' },
    { path: 'equipment.inverters', find: 'data sheet of the inverter' },
  ],
  wire: [
    CODE,
    { path: 'electrical.service.rating_a', find: 'handle of the main breaker', or: TREE },
    { path: 'electrical.panel.bus_a', find: 'label inside the door of the panel', or: TREE },
    { path: 'electrical.panel.main_a', find: 'handle of the main breaker', or: TREE },
    {
      path: 'electrical.panel.main_position',
      find: 'look into the panel: at which end of the busbar the main breaker is',
      or: TREE,
    },
    { path: 'electrical.panel.spaces_free', find: 'count the free places in the panel', or: TREE },
    { path: 'electrical.panel.terminal_temperature_c', find: 'marked on the breakers', or: TREE },
    { path: 'electrical.connection', find: 'where the system joins: a breaker in the panel, or ahead of the main' },
    { path: 'electrical.terminal_temperature_c', find: 'data sheets of inverter and disconnect' },
    { path: 'electrical.rapid_shutdown', find: 'data sheet of the inverter' },
    { path: 'electrical.disconnects', find: 'the power company says whether it wants one outdoors' },
    { path: 'electrical.runs', find: 'walk the way from the roof to the panel with a tape' },
  ],
  mounts: [
    { path: 'codes.loads', find: 'edition of the load standard: ask the building department' },
    { path: 'structure.wind.basic_speed_mph', find: BUILDING_DEPARTMENT },
    { path: 'structure.wind.exposure', find: 'look around: B houses and trees, C open country, D open water' },
    { path: 'structure.wind.mean_roof_height_ft', find: 'half-way between eave and ridge, above the ground' },
    { path: 'structure.snow.ground_psf', find: BUILDING_DEPARTMENT },
    { path: 'structure.building', find: 'measure length and width of the house' },
    { path: 'structure.seismic.design_category', find: BUILDING_DEPARTMENT },
    {
      path: 'structure.framing',
      find: 'look into the attic with a tape: rafters, spacing, span, grade stamp',
      or: ['structure.module_support'],
    },
    { path: 'structure.rail', find: 'data sheet of the rail', or: ['structure.module_support'] },
    { path: 'structure.mount', find: 'data sheet of the mount', or: ['structure.module_support'] },
  ],
  payback: [
    {
      path: 'usage.monthly_kwh',
      find: 'the last twelve bills',
      or: ['usage.annual_kwh', 'usage.green_button', 'usage.interval_csv'],
    },
    { path: 'tariff', find: 'rate sheet of the power company' },
    { path: 'finance.installed_cost_usd', find: 'a quote, or what price-bom adds up' },
  ],
  permit: [
    CODE,
    { path: 'codes.residential', find: 'edition of the residential code: ask the building department' },
    { path: 'document.date', find: 'day on which the packet is issued' },
    { path: 'site.address', find: 'address of the house' },
    { path: 'site_plan', find: 'map of the assessor, and a tape' },
  ],
}
