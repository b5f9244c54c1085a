import { madeUpFindings, madeUpFor, type HouseInput } from '../house/index.js'
import type { Finding } from '../worksheet/index.js'
import { SOURCE_STAGES } from './forms/index.js'

/** What the totals of a project count. */
const COUNTED = ['arrays', 'inverter_units', 'equipment']

/**
 * What is made up behind the fields of a form, as other papers tell it: values of the project that stand in a field, and
 * those that a stage is worked out from whose value does.
 *
 * @param sources Where the values of its fields come from: `project.PATH`, `totals.NAME` or `STAGE.PATH`.
 */
export function formMadeUp(input: HouseInput, sources: readonly string[]): Finding[] {
  const { madeUp = [] } = input
  const behind = new Set(sources.flatMap((from) => pathsBehind(input, madeUp, from)))
  return madeUpFindings({ ...input, madeUp: madeUp.filter((path) => behind.has(path)) }, 'form')
}

function pathsBehind(input: HouseInput, madeUp: readonly string[], from: string): string[] {
  const stage = SOURCE_STAGES.find((each) => from.startsWith(`${each}.`))
  if (stage !== undefined) return madeUpFor(input, stage).map(({ path }) => path)
  if (from.startsWith('totals.')) return madeUp.filter((path) => COUNTED.includes(path.split('.')[0] ?? ''))
  const asked = from.replace(/^project\./u, '')
  return madeUp.filter((path) => path === asked || asked.startsWith(`${path}.`) || path.startsWith(`${asked}.`))
}
