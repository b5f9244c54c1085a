import { STORAGE_RANGES } from '../../tables/equipment/index.js'
import { LFP_CELL } from '../../tables/storage/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

const NEC = (place: string) => ({ document: 'NEC 2017', place, standing: 'read' }) as const
const NETTING = {
  document: 'Advice letters of three California utilities under D.22-12-056',
  standing: 'secondary',
} as const

/** Findings about a home battery in bills, payback and outages. */
export const STORAGE: Explanations = {
  'storage.unlikely': {
    means: 'A value of the battery lies outside what batteries of the trade have.',
    rule: 'Round trip, standby, usable share, power over energy, years of warranty and price have ranges in which nearly all lie.',
    sources: [STORAGE_RANGES.roundTripPct.source, STORAGE_RANGES.powerPerEnergy.source],
    fix: 'Read sheet and offer again: usable or nameplate, AC or DC side, one unit or all.',
  },
  'storage.hourly': {
    means: 'The battery is worked out by hours, or by quarters of them where the meter tells them.',
    rule: 'Within an hour use and output come and go; netted by the hour, own use comes out some percent too high.',
    sources: [NETTING],
    fix: 'Nothing; take the saving as the upper end.',
  },
  'storage.cell-model': {
    means: 'Capacity fades by a published model of cells.',
    rule: 'A model of cells knows nothing of the product around them: its reserve, its cooling, its software.',
    sources: [LFP_CELL.calendar.source, LFP_CELL.cycle.source],
    fix: 'Leave storage.fade away to take the line of the warranty.',
  },
  'storage.dc-clipping': {
    means: 'What the shared inverter clips is not counted as charging the battery.',
    rule: 'On the DC side a battery may take what the inverter cannot pass; the energy estimate ends behind the inverter.',
    sources: [PRACTICE],
    fix: 'Nothing; the estimate is a little low.',
  },
  'storage.no-replacement': {
    means: 'The warranty of the battery ends within the study, and no new one is counted.',
    rule: 'It ends at the first of years, energy throughput and full cycles.',
    sources: [PRACTICE],
    fix: 'State storage.replacement, or study fewer years.',
  },
  'storage.replaced': {
    means: 'The battery is bought again within the study.',
    rule: 'It is replaced in the year in which its capacity falls below the floor, or its warranty ends.',
    sources: [PRACTICE],
    fix: 'Nothing; storage.replacement says when and for how much.',
  },
  'storage.no-optimum': {
    means: 'No optimum is worked out for this tariff.',
    rule: 'The optimum needs one price for each hour. Tiers, demand charges and netting over a bill give an hour a price that depends on all others.',
    sources: [PRACTICE],
    fix: 'Nothing; the bills themselves are exact.',
  },
  'storage.backup-power': {
    means: 'The essential loads together need more power than the battery gives.',
    rule: 'With automatic transfer a source has to carry all that is transferred to it.',
    sources: [NEC('702.4(B)')],
    fix: 'Choose fewer loads or more units.',
  },
  'storage.backup-start': {
    means: 'The start of a motor is more than the battery gives for a moment, or that cannot be checked.',
    rule: 'A motor takes three to six times its power when it starts, by experience; sheets state kW for seconds, or A of locked rotor.',
    sources: [PRACTICE],
    fix: 'Take the motor off the essential loads, add a soft starter, or add units.',
  },
  'storage.backup-start-unknown': {
    means: 'No start of a motor is stated among the essential loads.',
    rule: 'A refrigerator or a pump that does not start is not backed up.',
    sources: [PRACTICE],
    fix: 'State surge_w or locked_rotor_a.',
  },
  'storage.backup-neutral': {
    means: 'Loads of 120 V need a neutral that the battery may not form.',
    rule: 'A unit of 240 V with two wires makes no neutral when the grid is away.',
    sources: [NEC('706.20(C), 710.15')],
    fix: 'Take a unit with a neutral of its own, or a listed transformer.',
  },
  'storage.backup-shutdown': {
    means: 'Rapid shutdown may not work while the battery keeps the house on.',
    rule: 'Loss of grid power starts no shutdown where a battery keeps the modules running; a switch of its own does.',
    sources: [NEC('690.12(C)(3), informational note')],
    fix: 'Give the shutdown a switch, and state shutdown_works_islanded.',
  },
  'storage.backup-modules': {
    means: 'The modules are counted as off in an outage.',
    rule: 'Output that the battery can neither take nor hold back trips it; makers state the most for one unit.',
    sources: [PRACTICE],
    fix: 'State max_pv_ac_kw, add units, or keep a part of the modules off the backed-up panel.',
  },
  'size.without-storage': {
    means: 'The table of sizes leaves the battery of the project out.',
    rule: 'What a battery saves depends on the number of modules, so both are compared together when asked for.',
    sources: [PRACTICE],
    fix: 'Use `gablewatt choose-size --storage 2`.',
  },
  'storage.not-for-life': {
    means: 'Hours of backup are an estimate.',
    rule: 'Weather, age, a forgotten load or a fault end them sooner.',
    sources: [PRACTICE],
    fix: 'Have another source for equipment that keeps a person alive, and tell the utility of it.',
  },
}
