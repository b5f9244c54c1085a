import { landingPanel } from '../../project/facts.js'
import { isAc, isSupplyTap, type Circuit, COMBINED_OUTPUT, type Job } from '../system/index.js'
import { own } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'

/**
 * Temperature column that the terminals of a circuit allow: the lowest of its ends.
 *
 * @returns 60 where nothing is marked, at any current, which is on the safe side.
 * @throws StageError for a rating other than 60 or 75 deg C.
 * @source NEC 110.14(C)(1)
 */
export function terminalTemperatureC(job: Job, circuit: Circuit): 60 | 75 {
  const { electrical } = job
  const others = end(
    job,
    electrical.terminal_temperature_c,
    'electrical.terminal_temperature_c',
    'inverters, boxes and disconnects',
  )
  if (!isAc(circuit) || isSupplyTap(circuit)) return others
  if (circuit.storage !== undefined) return lower(others, storageEnd(job, circuit.storage.landing))
  // A tap ends in the PV disconnect, whose terminals are among the others.
  if (electrical.connection?.kind === 'feeder_tap' && circuit.id === COMBINED_OUTPUT)
    return lower(others, combinerEnd(job))
  const landing = landingPanel(electrical)
  const atCombiner = electrical.combiner !== undefined
  const panel = () =>
    end(job, landing.stated?.terminal_temperature_c, `${landing.where}.terminal_temperature_c`, 'the panel')
  const combiner = () => combinerEnd(job)
  if (circuit.id === COMBINED_OUTPUT) return lower(others, lower(combiner(), panel()))
  return lower(others, atCombiner ? combiner() : panel())
}

function storageEnd(job: Job, landing: string | undefined): 60 | 75 {
  const { distribution, panel } = job.electrical
  const [stated, where] =
    distribution === undefined
      ? [panel, 'electrical.panel']
      : [own(distribution.panels, landing ?? ''), `electrical.distribution.panels.${landing ?? ''}`]
  return end(job, stated?.terminal_temperature_c, `${where}.terminal_temperature_c`, 'the panel of the storage')
}

const combinerEnd = (job: Job): 60 | 75 =>
  end(
    job,
    job.electrical.combiner?.terminal_temperature_c,
    'electrical.combiner.terminal_temperature_c',
    'the combiner panel',
  )

const lower = (a: 60 | 75, b: 60 | 75): 60 | 75 => (a < b ? a : b)

function end(job: Job, marked: number | undefined, path: string, what: string): 60 | 75 {
  if (marked === 60 || marked === 75) return marked
  if (marked !== undefined)
    throw new StageError(
      path,
      `terminals of ${marked} deg C are not allowed; 60 and 75 are`,
      'Read the marking of the terminals; the 90 deg C column serves only for correction and adjustment',
    )
  return job.worksheet.assume({
    path,
    value: 60 as const,
    unit: 'deg C',
    why: `Terminals of ${what} that are not marked 75 deg C count as 60`,
    source: job.nec('terminalTemperature'),
  })
}
