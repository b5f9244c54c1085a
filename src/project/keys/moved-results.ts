/** A result that a key can move, by the name of its stage; `packet` is that of the drawings, and papers hold what all stages give. */
export type MovedResult =
  | 'roof'
  | 'yield'
  | 'wire'
  | 'mounts'
  | 'bom'
  | 'payback'
  | 'size'
  | 'work'
  | 'packet'
  | 'output'
  | 'proposal'
  | 'application'
  | 'handover'
  | 'fleet'

type Moved = readonly MovedResult[]

const NOTHING: Moved = []
const PAPER: Moved = ['packet']
const APPLICATION: Moved = ['application']
/** What the modules give, and what follows from it. */
const ENERGY: Moved = ['yield', 'payback', 'size', 'work', 'output']
const MONEY: Moved = ['payback', 'size']
const WIRING: Moved = ['wire', 'bom', 'work', 'packet']
const MOUNTING: Moved = ['mounts', 'bom', 'work', 'packet']
/** Which modules there are and where: all that is built and all that it gives. */
const EVERYTHING: Moved = ['roof', 'yield', 'wire', 'mounts', 'bom', 'payback', 'size', 'work', 'packet', 'output']
const both = (...parts: readonly Moved[]): Moved => EVERYTHING.filter((one) => parts.some((part) => part.includes(one)))

/**
 * What a key can move, by pattern; the one that names most of a key counts. Whether it does depends on the project. A
 * test changes the numbers of the sample houses one by one and compares.
 */
export const MOVED_RESULTS: readonly (readonly [pattern: string, results: Moved])[] = [
  ['format', NOTHING],
  ['title', PAPER],
  ['parties.**', PAPER],
  ['document.**', PAPER],
  ['documents', PAPER],
  ['documents.**', PAPER],
  ['drawings.**', PAPER],
  ['permit.**', PAPER],
  ['existing_house.**', both(WIRING, PAPER)],
  ['equipment.storage_units.*.max_ocpd_a', WIRING],
  ['equipment.storage_units.*.battery_side.*', WIRING],
  ['storage.backup.panel', WIRING],
  ['storage.backup.isolating_device_*', WIRING],
  ['storage.backup.load_managed', WIRING],
  ['storage.backup.largest_load_w', WIRING],
  ['storage.backup.switched_neutral', WIRING],
  ['storage.backup.outlets_240_v', WIRING],
  ['storage.backup.multiwire_circuits', WIRING],
  ['storage.backup.neutral_bus_a', WIRING],
  ['storage.installation.**', WIRING],
  ['codes.*', PAPER],
  ['codes.electrical', WIRING],
  ['codes.loads', MOUNTING],
  ['codes.wood', MOUNTING],
  ['codes.residential', EVERYTHING],
  ['site.*', PAPER],
  ['site.latitude_deg', both(ENERGY, WIRING)],
  ['site.longitude_deg', both(ENERGY, WIRING)],
  ['site.elevation_ft', both(ENERGY, WIRING, MOUNTING)],
  ['site.utc_offset_h', ENERGY],
  ['site.climate', both(ENERGY, WIRING)],
  ['site.climate.**', both(ENERGY, WIRING)],
  ['site.albedo', ENERGY],
  ['site.monthly_*', ENERGY],
  ['site.horizon.**', ENERGY],
  ['site.obstacles.**', ENERGY],
  ['site.design_temperatures.*', both(WIRING, MOUNTING)],
  ['site.overhead_lines.**', WIRING],
  ['roof_planes.**', EVERYTHING],
  ['roof_access.**', EVERYTHING],
  ['arrays.**', EVERYTHING],
  ['arrays.*.standoff_in', both(ENERGY, WIRING, MOUNTING)],
  ['arrays.*.mounting', both(ENERGY, WIRING, MOUNTING)],
  ['inverter_units.**', both(ENERGY, WIRING)],
  ['equipment.file', EVERYTHING],
  ['equipment.*.*.name', both(['bom', 'work'], PAPER)],
  ['equipment.*.*.sheet', PAPER],
  ['equipment.modules.*.*', EVERYTHING],
  ['equipment.modules.*.ac_module.**', both(ENERGY, WIRING)],
  ['equipment.modules.*.fire_type', both(['roof'], PAPER)],
  ['equipment.modules.*.*_temp_coeff_*', both(ENERGY, WIRING)],
  ['equipment.modules.*.noct_c', both(ENERGY, WIRING)],
  ['equipment.modules.*.construction', both(ENERGY, WIRING)],
  ['equipment.modules.*.efficiency_at_200_pct', ENERGY],
  ['equipment.modules.*.v*_v', both(ENERGY, WIRING)],
  ['equipment.modules.*.i*_a', both(ENERGY, WIRING)],
  ['equipment.modules.*.max_*', WIRING],
  ['equipment.modules.*.weight_lb', both(MOUNTING, ['roof'])],
  ['equipment.modules.*.design_load_*', MOUNTING],
  ['equipment.modules.*.clamp_zone_*', both(MOUNTING, ['roof'])],
  ['equipment.modules.*.listing', PAPER],
  ['equipment.modules.*.ptc_w', APPLICATION],
  ['equipment.inverters.**', both(ENERGY, WIRING)],
  ['equipment.inverters.*.weight_lb', both(WIRING, MOUNTING)],
  ['equipment.inverters.*.listing', PAPER],
  ['equipment.inverters.*.max_fault_current_a', APPLICATION],
  ['equipment.inverters.*.ieee1547_*', APPLICATION],
  ['equipment.inverters.*.certificate', APPLICATION],
  ['equipment.optimisers.**', both(ENERGY, WIRING)],
  ['equipment.trunk_cables.**', WIRING],
  ['equipment.rails.**', both(MOUNTING, ['roof'])],
  ['equipment.mounts.**', both(MOUNTING, ['roof'])],
  ['equipment.storage_units.**', both(MONEY, WIRING)],
  ['equipment.storage_units.*.sheet', PAPER],
  ['storage.**', MONEY],
  ['storage.unit', both(MONEY, WIRING)],
  ['storage.count', both(MONEY, WIRING)],
  ['storage.backup.**', both(MONEY, WIRING)],
  ['storage.installation.**', WIRING],
  ['model.**', ENERGY],
  ['losses.**', ENERGY],
  ['electrical.**', WIRING],
  ['electrical.remedy_costs_usd.**', ['wire']],
  ['structure.**', both(MOUNTING, ['roof'])],
  ['materials.**', ['bom']],
  ['usage.**', both(MONEY, ['output'])],
  ['tariff.**', both(MONEY, ['output'])],
  ['incentives.**', both(['bom'], MONEY)],
  ['finance.**', MONEY],
  ['finance.years', both(['yield'], MONEY)],
  ['site_plan.**', both(ENERGY, WIRING)],
  ['production.**', ['output']],
  ['proposal.**', ['proposal']],
  ['fleet.**', ['fleet']],
  ['commissioning.**', ['handover']],
  ['utility_application.**', APPLICATION],
]
