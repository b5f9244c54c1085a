import { nearestSite } from '../../climate/index.js'
import type { Project } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { expectedHours, runYield, type DayChoice, type ExpectedHours, type YieldRun } from '../../yield/index.js'
import { inStepsOf } from '../calendar/index.js'
import { readTariffs, type RateSheets } from '../tariff/index.js'
import { readUsage, useOfYears, type UseOfYear, type UsageYear } from '../usage/index.js'
import { outdoorHoursC } from './outdoor-hours.js'

/** What every question about money needs of a project. */
export interface House {
  readonly sheets: RateSheets
  /** Use of the first year: by quarters of an hour where the meter tells them, else by hours. */
  readonly usage: UsageYear
  /** Use of each year; undefined when all years are alike. */
  readonly usageOf: UseOfYear | undefined
  readonly run: YieldRun
  readonly hours: ExpectedHours
}

/**
 * Reads tariff and use, estimates the output, and lays it over the hours of the year.
 *
 * @param files Text of the files that the project names, by the path as written.
 * @param worksheet Takes the proof of the use, errors of the energy estimate, and how the hours came about.
 * @param estimate The energy estimate of this very project, where it is known already.
 * @throws StageError when tariff, use or a part of the estimate is missing.
 */
export function readHouse(
  project: Project,
  files: ReadonlyMap<string, string>,
  worksheet: Worksheet,
  estimate: () => YieldRun = () => runYield(project, files),
): House {
  const sheets = readTariffs(project.tariff)
  const run = estimate()
  for (const finding of run.result.findings) if (finding.severity === 'error') worksheet.find(finding)
  const file = project.usage?.green_button ?? project.usage?.interval_csv?.file
  const fileText = file === undefined ? undefined : files.get(file)
  const state = nearestState(project)
  const usage = readUsage(project.usage, {
    utcOffsetH: run.climate.utcOffsetH,
    ...(fileText === undefined ? {} : { fileText }),
    ...(state === undefined ? {} : { state }),
  })
  worksheet.include(usage)
  const steps = usage.values.quarterKwh ?? usage.values.usageKwh
  const usageOf = useOfYears(
    project.usage,
    steps,
    { calendar: usage.values.calendar, outdoorC: () => outdoorHoursC(run.climate) },
    project.finance?.base_year,
    worksheet,
  )
  const hours = expectedHours(run, dayChoice(project, run, worksheet))
  recordOutput(run, hours, worksheet)
  if (usage.values.quarterKwh !== undefined) tellQuarters(project, worksheet)
  const firstYear = { ...usage.values, usageKwh: usageOf === undefined ? steps : usageOf(1) }
  return { sheets, usage: firstYear, usageOf, run, hours: { ...hours, kwh: inStepsOf(steps, hours.kwh) } }
}

/** The climate has hours: what the sun does within one is not known. */
function tellQuarters({ usage }: Project, worksheet: Worksheet): void {
  worksheet.assume({
    path: usage?.interval_csv === undefined ? 'usage.green_button' : 'usage.interval_csv',
    value: 15,
    unit: 'min',
    why: 'bills and battery are worked out by the quarters of an hour of the metered use; the output is even within each hour, so that clouds of minutes are hidden and own use is overstated a little',
    source: { document: 'Hourly climate spread evenly', standing: 'common practice, no source' },
  })
}

/** State of the nearest built-in climate site; a house near a border may get its neighbour's. */
function nearestState(project: Project): string | undefined {
  const { latitude_deg: latitudeDeg, longitude_deg: longitudeDeg } = project.site
  return nearestSite({ latitudeDeg, longitudeDeg })?.site.state
}

/** Which days the bills are worked out with. */
export function dayChoice(project: Project, run: YieldRun, worksheet: Worksheet): DayChoice {
  const stated = project.finance?.output_days
  if (stated !== undefined || run.climate.kind === 'hourly') return stated ?? 'dealt'
  return worksheet.assume({
    path: 'finance.output_days',
    value: 'dealt' as const,
    unit: '',
    why: 'each day of a month gets one of its ten kinds from dull to clear, in a fixed mixed order; a mean day would hide exports and overstate own use',
    source: {
      document: 'Bendt, Collares-Pereira & Rabl 1981 for the kinds; their order is ours',
      standing: 'common practice, no source',
    },
  })
}

const WORDS: Readonly<Record<ExpectedHours['from'], string>> = {
  weather_file: 'hours of the weather file',
  dealt_days: 'a kind of day for every day of the month',
  mean_days: 'the mean day of each month',
}

function recordOutput(run: YieldRun, hours: ExpectedHours, worksheet: Worksheet): void {
  const kwh = hours.kwh.reduce((sum, each) => sum + each, 0)
  worksheet.step({
    id: 'money.output',
    says: `Output of the first year, laid over the hours: ${WORDS[hours.from]}`,
    formula: 'E = sum of 8760 hours of local standard time',
    inputs: [
      { symbol: 'AC', value: run.result.values.annual.ac_kwh, unit: 'kWh', from: 'energy estimate, annual.ac_kwh' },
      { symbol: '29 February', value: hours.leapDayKwh, unit: 'kWh', from: 'left out of a year of 365 days' },
    ],
    result: { symbol: 'E', value: kwh, unit: 'kWh' },
    source: { document: 'Energy estimate of this project', standing: 'project file' },
  })
  if (hours.leapDayKwh === 0) return
  worksheet.find({
    severity: 'note',
    id: 'money.leap-day',
    message: `29 February of the weather file (${hours.leapDayKwh.toFixed(1)} kWh) is left out: bills are those of a year of 365 days`,
    where: 'site.climate',
  })
}
