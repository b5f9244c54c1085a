/** Stages that tell what of their input is made up. */
export type TellingStage =
  | 'roof'
  | 'yield'
  | 'wire'
  | 'mounts'
  | 'bom'
  | 'payback'
  | 'size'
  | 'permit'
  | 'work'
  | 'output'
  | 'proposal'
  | 'application'
  | 'handover'
  | 'form'
  | 'parts'

const ROOF = ['roof_planes', 'arrays', 'equipment', 'roof_access', 'site_plan', 'codes']
const YIELD = ['site', 'roof_planes', 'arrays', 'inverter_units', 'equipment', 'losses', 'model', 'site_plan']
const WIRE = ['site', 'arrays', 'inverter_units', 'equipment', 'electrical', 'codes', 'roof_planes', 'storage']
const MOUNTS = [...ROOF, 'structure']
const DESIGN = [...new Set([...YIELD, ...WIRE, ...MOUNTS])]
const MONEY = ['usage', 'tariff', 'finance', 'incentives', 'storage']
const PAPERS = ['title', 'document', 'parties', 'drawings', 'existing_house', 'permit', 'documents']

/** Parts of the project that each stage reads, of the stages behind it too. */
const PARTS: Readonly<Record<TellingStage, readonly string[]>> = {
  roof: ROOF,
  yield: YIELD,
  wire: WIRE,
  mounts: MOUNTS,
  bom: [...DESIGN, 'materials'],
  payback: [...YIELD, ...MONEY],
  size: [...DESIGN, ...MONEY],
  parts: [...DESIGN, ...MONEY, 'materials'],
  permit: [...DESIGN, ...PAPERS],
  work: DESIGN,
  output: [...YIELD, 'production', 'tariff', 'usage'],
  proposal: [...DESIGN, ...MONEY, 'materials', 'title', 'document', 'parties', 'proposal'],
  application: [...DESIGN, ...PAPERS, 'usage', 'utility_application'],
  handover: [...DESIGN, ...PAPERS, 'proposal', 'commissioning'],
  // A form may ask for any of them; what its mapping asks for counts.
  form: [...new Set([...DESIGN, ...PAPERS, ...MONEY, 'materials', 'utility_application', 'proposal', 'commissioning'])],
}

/** Names of the top-level parts of the project that a stage reads. */
export function partsOf(stage: TellingStage): readonly string[] {
  return PARTS[stage]
}

/** Where a wrong value could hurt somebody: what carries loads, current or firefighters, and what that is worked out from. */
const SAFETY = [
  'structure',
  'electrical',
  'equipment',
  'codes',
  'roof_access',
  'roof_planes',
  'arrays',
  'inverter_units',
  'storage',
  'existing_house',
  'site.overhead_lines',
  'site.design_temperatures',
  'site.elevation_ft',
]

/** Values of these parts that nothing is built by: names, and what counts for energy alone. */
const HARMLESS =
  /(?:\.(?:name|maker|price_usd|noct_c|weighted_efficiency_pct|azimuth_deg|pmax_temp_coeff_pct_per_c)|\.modules)$/u

/** Whether somebody could be hurt where the value at a dotted path is wrong. */
export function isSafety(path: string): boolean {
  return SAFETY.some((part) => path === part || path.startsWith(`${part}.`)) && !HARMLESS.test(path)
}
