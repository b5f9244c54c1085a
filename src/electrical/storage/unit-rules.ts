import { STORAGE_ARTICLE_KWH, storageSection, type Edition } from '../../tables/nec/index.js'
import type { Job } from '../system/index.js'
import { answerStated, compareStated, type StorageCheck } from './storage-check.js'
import type { StorageSystem } from './storage-unit.js'

/** Voltage that live parts in a dwelling may have only when they are not accessible in routine maintenance, V. */
const ACCESSIBLE_V = 100
/** Highest DC voltage of storage in a dwelling, V; from memory. */
const DWELLING_DC_V = 600

/** What the data sheet has to state: listing, largest device, the DC circuit of the battery. */
export function unitRules(job: Job, { unit, unitWhere, count }: StorageSystem): StorageCheck[] {
  const { edition } = job
  return [
    ...listing(unitWhere, unit.listed, edition, unit.chemistry === 'lead_acid'),
    ...(unit.coupling === 'ac'
      ? [
          answerStated({
            id: 'max-device',
            where: `${unitWhere}.max_ocpd_a`,
            answer: unit.max_ocpd_a === undefined ? undefined : true,
            yes: `its maker allows a device of ${unit.max_ocpd_a ?? 0} A`,
            no: '',
            missing:
              'the largest overcurrent device that the maker allows is not stated, so the device was not held against it',
            source: job.nec('listedEquipment'),
            fix: 'Take it from the installation manual',
          }),
        ]
      : []),
    ...article(count * (unit.nameplate_kwh ?? unit.usable_kwh), edition),
    ...battery(unitWhere, unit.battery_side, edition),
  ]
}

function listing(
  where: string,
  listed: StorageSystem['unit']['listed'],
  edition: Edition,
  leadAcid: boolean,
): StorageCheck[] {
  const source = storageSection(edition, 'listed')
  return [
    ...(leadAcid
      ? []
      : [
          answerStated({
            id: 'listed',
            where: `${where}.listed.ul_9540`,
            answer: listed?.ul_9540,
            yes: 'the unit is listed to UL 9540',
            no: 'the unit is not listed to UL 9540 as a complete system',
            missing: 'whether the unit is listed to UL 9540 is not stated',
            source,
            fix: 'Use a listed system; the mark with model and energy rating stays visible on it',
          }),
        ]),
    answerStated({
      id: 'interactive-listed',
      where: `${where}.listed.ul_1741`,
      answer: listed?.ul_1741,
      yes: 'its inverter is listed to UL 1741 as interactive',
      no: 'its inverter is not listed to UL 1741 as interactive',
      missing: 'whether its inverter is listed to UL 1741 as interactive is not stated',
      source: storageSection(edition, 'interactive'),
      fix: 'Use one that is; the utility asks for it',
    }),
  ]
}

function article(energyKwh: number, edition: Edition): StorageCheck[] {
  if (edition === 'NEC 2017' || energyKwh > STORAGE_ARTICLE_KWH) return []
  return [
    {
      id: 'article-706',
      where: 'storage.count',
      says: `${energyKwh} kWh is not above ${STORAGE_ARTICLE_KWH} kWh, so article 706 does not rule it; it is held to it all the same`,
      verdict: 'not_ruled',
      source: storageSection(edition, 'listed'),
      fix: 'Ask the authority',
    },
  ]
}

function battery(where: string, side: StorageSystem['unit']['battery_side'], edition: Edition): StorageCheck[] {
  if (side === undefined) return []
  const at = `${where}.battery_side`
  const highV = side.highest_voltage_v
  return [
    answerStated({
      id: 'dc-device-listed',
      where: `${at}.device_dc_listed`,
      answer: side.device_dc_listed,
      yes: 'the overcurrent device of the battery is listed for DC',
      no: 'the overcurrent device of the battery is not listed for DC',
      missing: 'whether the overcurrent device of the battery is listed for DC is not stated',
      source: storageSection(edition, 'dcDevices'),
      fix: 'Use one that is listed for DC at the highest battery voltage, with an interrupting rating above what the battery gives',
    }),
    answerStated({
      id: 'current-limited',
      where: `${at}.current_limited`,
      answer: side.current_limited,
      yes: 'a listed current-limiting device stands next to the battery, or inside it',
      no: 'no listed current-limiting device stands next to the battery',
      missing: 'whether a listed current-limiting device stands next to the battery is not stated',
      source: storageSection(edition, 'currentLimiting'),
      fix: 'Fit listed current-limiting fuses next to the battery for each DC output',
    }),
    compareStated({
      id: 'dc-voltage',
      where: `${at}.highest_voltage_v`,
      what: `highest battery voltage (above ${ACCESSIBLE_V} V live parts must not be accessible in routine maintenance)`,
      value: highV,
      limit: DWELLING_DC_V,
      unit: 'V',
      relation: '<=',
      source: storageSection(edition, 'dwellingVoltage'),
      fix: 'Use a battery of a lower voltage',
    }),
  ]
}
