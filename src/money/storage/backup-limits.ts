import type { Kilowatts } from '../../values/index.js'
import type { Finding, Source, Worksheet } from '../../worksheet/index.js'
import type { Essential } from './essential.js'
import type { HouseBattery } from './read-storage.js'

const FULL_LOAD: Source = { document: 'NEC 2017', place: '702.4(B)', standing: 'read' }
const SHUTDOWN: Source = { document: 'NEC 2017', place: '690.12(C)(3), informational note', standing: 'read' }
const RATIO: Source = {
  document: 'installation manuals of home batteries: most output of the modules for one unit',
  standing: 'common practice, no source',
}
const SHEET: Source = { document: 'data sheet of the battery', standing: 'project file' }

/**
 * What decides in an outage besides energy: power, starts, neutral, shutdown, and whether the modules may run in the island. A
 * check that cannot be made is told.
 *
 * @param acKw Rated AC output of all inverters, kW.
 * @returns Whether the modules run in the island.
 */
export function backupLimits(
  house: HouseBattery,
  essential: Essential,
  acKw: Kilowatts,
  worksheet: Worksheet,
): boolean {
  const { part, count } = house
  const { unit, path } = part
  const backup = part.storage.backup
  const tell = (
    severity: Finding['severity'],
    id: string,
    where: string,
    message: string,
    fix: string,
    source = SHEET,
  ) => {
    worksheet.find({ severity, id: `storage.${id}`, message, where, source, fix })
  }
  const kw = (w: number): string => `${String(Number((w / 1000).toFixed(3)))} kW`
  const { dischargeKw } = house.system.battery
  if (essential.peakW > dischargeKw * 1000) {
    const isAutomatic = backup?.transfer !== 'manual'
    tell(
      isAutomatic ? 'error' : 'warning',
      'backup-power',
      'storage.backup',
      `essential loads of ${kw(essential.peakW)} at once are more than the ${kw(dischargeKw * 1000)} that the battery gives, so that it switches off when all run`,
      isAutomatic
        ? 'Choose fewer loads or more units; with automatic transfer the battery has to carry all that is transferred.'
        : 'Choose fewer loads or more units, or never run all at once.',
      FULL_LOAD,
    )
  }
  checkStart(house, essential, tell)
  if (backup?.needs_neutral !== false && unit.neutral_forming !== true)
    tell(
      unit.neutral_forming === false ? 'error' : 'warning',
      'backup-neutral',
      `${path}.neutral_forming`,
      unit.neutral_forming === false
        ? 'the battery forms no neutral, and loads of 120 V need one when the grid is away'
        : 'whether the battery forms a neutral is not stated, so that nobody knows whether loads of 120 V run when the grid is away',
      'Take a unit that does, or a listed neutral-forming transformer, or state needs_neutral: false where no load needs one.',
    )
  if (backup?.shutdown_works_islanded !== true)
    tell(
      backup?.shutdown_works_islanded === false ? 'error' : 'warning',
      'backup-shutdown',
      'storage.backup.shutdown_works_islanded',
      backup?.shutdown_works_islanded === false
        ? 'rapid shutdown is started by loss of grid power only, and the battery keeps the modules running when the grid is lost'
        : 'whether rapid shutdown works while the battery keeps the house on is not stated',
      'Give the rapid shutdown a switch of its own, and state shutdown_works_islanded.',
      SHUTDOWN,
    )
  return modulesRun(house, acKw, count, tell)
}

type Tell = (
  severity: Finding['severity'],
  id: string,
  where: string,
  message: string,
  fix: string,
  source?: Source,
) => void

function checkStart({ part: { unit, path }, count }: HouseBattery, essential: Essential, tell: Tell): void {
  const { surgeW, lockedRotorA } = essential
  if (surgeW === undefined && lockedRotorA === undefined)
    return tell(
      'warning',
      'backup-start-unknown',
      'storage.backup',
      'no start of a motor is stated, so that nobody knows whether pumps, refrigerators and fans start on the battery',
      'State surge_w or locked_rotor_a; motors take several times their power for a moment.',
    )
  if (surgeW !== undefined) {
    // Without a surge rating a unit gives what it gives continuously.
    const surgeKw = count * (unit.surge_kw ?? unit.discharge_kw)
    const stated = unit.surge_kw === undefined ? 'its continuous output, as no surge_kw is stated' : 'its surge_kw'
    if (surgeW > surgeKw * 1000)
      tell(
        unit.surge_kw === undefined ? 'warning' : 'error',
        'backup-start',
        `${path}.surge_kw`,
        `a start takes the house to ${String(surgeW)} W, more than ${String(Number((surgeKw * 1000).toFixed(0)))} W, ${stated}`,
        'Take the motor off the essential loads, add a soft starter, or add units.',
      )
  }
  if (lockedRotorA === undefined) return
  if (unit.surge_a === undefined)
    tell(
      'warning',
      'backup-start',
      `${path}.surge_a`,
      `a motor of ${String(lockedRotorA)} A locked rotor is stated, and the largest that the battery starts is not`,
      'State surge_a from the data sheet.',
    )
  else if (lockedRotorA > unit.surge_a * count)
    tell(
      'error',
      'backup-start',
      `${path}.surge_a`,
      `a motor of ${String(lockedRotorA)} A locked rotor is more than the ${String(unit.surge_a * count)} A that the battery starts`,
      'Take the motor off the essential loads, or add a soft starter.',
    )
}

function modulesRun({ part: { unit, path } }: HouseBattery, acKw: Kilowatts, count: number, tell: Tell): boolean {
  if (unit.coupling === 'dc') return true
  const most = unit.max_pv_ac_kw === undefined ? undefined : unit.max_pv_ac_kw * count
  if (most !== undefined && acKw <= most) return true
  const why =
    most === undefined
      ? 'how much output the battery holds in an island is not stated'
      : `${acKw.toFixed(2)} kW of inverters are more than the ${String(Number(most.toFixed(3)))} kW that the battery holds in an island`
  tell(
    'warning',
    'backup-modules',
    `${path}.max_pv_ac_kw`,
    `${why}, so the modules are counted as off in an outage`,
    'State max_pv_ac_kw from the manual, add units, or keep a part of the modules off the backed-up panel.',
    RATIO,
  )
  return false
}
