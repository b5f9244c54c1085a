import type { StorageLife } from '../../storage/index.js'
import { LFP_CELL } from '../../tables/storage/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import type { HouseBattery } from './read-storage.js'

const NETTING: Source = {
  document: 'Advice letters of three California utilities under D.22-12-056',
  place: 'net exports of houses without storage, not netted over those netted by the hour: 102.51 to 105.64 %',
  standing: 'secondary',
}
const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

/** What a person must know of the way in which a battery is worked out. */
export function tellStorage(
  { part, fade, replace, system }: HouseBattery,
  life: StorageLife,
  stepH: number,
  worksheet: Worksheet,
): void {
  const { storage, path } = part
  worksheet.find({
    severity: 'note',
    id: 'storage.hourly',
    message:
      stepH < 1
        ? 'the battery follows quarters of an hour of the metered use; output is even within each hour, which overstates own use a little'
        : 'use and output are netted within each hour, which overstates own use by some percent and what the battery has to do less',
    where: 'storage',
    source: NETTING,
  })
  const assume = (key: string, value: number | string, unit: string, why: string, source = PRACTICE): void => {
    worksheet.assume({ path: `storage.${key}`, value, unit, why, source })
  }
  if (storage.reserve_pct === undefined) assume('reserve_pct', 0, '%', 'nothing is kept for an outage')
  if (storage.start_pct === undefined)
    assume(
      'start_pct',
      storage.reserve_pct ?? 0,
      '%',
      'the year begins with the reserve only; what is left at its end is worth nothing',
    )
  if (storage.control === undefined)
    assume('control', 'own use first', '', 'surplus charges, and the battery serves the house at any hour')
  else if (storage.control.charge_from === undefined)
    assume('control.charge_from', 'surplus', '', 'never from the grid, as rules of net billing mostly ask')
  if (storage.fade === undefined)
    assume(
      'fade',
      'warranty_line',
      '',
      'a straight line to the warranted capacity is on the safe side and can be checked',
    )
  if (fade.kind === 'cell')
    worksheet.find({
      severity: 'warning',
      id: 'storage.cell-model',
      message:
        'capacity fades by a published model of lfp cells, which is no promise of this product; its constants are from memory',
      where: 'storage.fade',
      source: LFP_CELL.calendar.source,
      fix: 'Leave fade away to take the line of the warranty.',
    })
  if (system.battery.sharedAcKw !== undefined)
    worksheet.find({
      severity: 'note',
      id: 'storage.dc-clipping',
      message:
        'output that the shared inverter clips is not counted as charging the battery, which understates it a little',
      where: path,
    })
  const { warrantyEnd: end } = life
  const replaced = life.years.filter((one) => one.replaced).map(({ year }) => year)
  if (end !== undefined && replace === undefined)
    worksheet.find({
      severity: 'warning',
      id: 'storage.no-replacement',
      message: `the warranty of the battery ends after ${end.afterYears.toFixed(1)} years by its ${end.by}, within the study, and no replacement is counted`,
      where: 'storage.replacement',
      source: { document: 'warranty of the battery', standing: 'project file' },
      fix: 'State storage.replacement, or study fewer years.',
    })
  if (replaced.length > 0)
    worksheet.find({
      severity: 'note',
      id: 'storage.replaced',
      message: `the battery is bought again at the end of year ${replaced.join(' and ')}`,
      where: 'storage.replacement',
    })
}
