import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import type { DcCombiner } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Amperes } from '../../values/index.js'
import { nextStandardDeviceA, type Circuit, type Job } from '../system/index.js'

/**
 * Strings with the fuses of their DC combiners, and after them the output circuits of these.
 *
 * @throws StageError when a box names a string that is not there, twice, or of another input, or leaves one of its input out.
 */
export function combineStrings(job: Job, strings: readonly Circuit[]): Circuit[] {
  const boxes = Object.entries(job.electrical.dc_combiners ?? {}).map(([id, stated]) => ({
    id,
    stated,
    strings: stringsOf(id, stated, strings),
  }))
  checkOnce(boxes)
  const all = strings.map((string) => fused(string, boxes))
  const outputs = boxes.map(({ id, stated, strings: inBox }) => {
    const ids = inBox.map((string) => string.id)
    return outputCircuit(
      id,
      stated,
      all.filter((string) => ids.includes(string.id)),
    )
  })
  return [...all, ...outputs]
}

interface Box {
  readonly id: string
  readonly stated: DcCombiner
  readonly strings: readonly Circuit[]
}

const placeOf = (id: string): string => `electrical.dc_combiners.${id}.inputs`

function stringsOf(id: string, stated: DcCombiner, all: readonly Circuit[]): Circuit[] {
  const found = stated.inputs.map((name) => {
    const string = all.find((candidate) => candidate.id === name)
    if (string !== undefined) return string
    throw new StageError(
      placeOf(id),
      `there is no string '${name}'; known are ${all.map((each) => each.id).join(', ') || '(none)'}`,
      'Use array id, underscore, s, number: south_s1',
    )
  })
  const inputs = new Set(found.map(inputOf))
  const [input] = inputs
  if (inputs.size > 1)
    throw new StageError(
      placeOf(id),
      `the strings of one box lie in parallel, and these go to ${[...inputs].join(' and ')}`,
      'State the same inverter_unit and input for them, or give each input a box of its own',
    )
  const left = all.filter((each) => inputOf(each) === input && !found.includes(each))
  if (left.length > 0)
    throw new StageError(
      placeOf(id),
      `${left.map((each) => each.id).join(', ')} ${left.length === 1 ? 'lies' : 'lie'} in parallel on ${input ?? ''} too, but not in the box`,
      'Bring all strings of an input together in one box; boxes in parallel are not covered',
    )
  return found
}

const inputOf = ({ string }: Circuit): string => `${string?.unit ?? ''} input ${string?.input ?? 1}`

function checkOnce(boxes: readonly Box[]): void {
  const seen = new Set<string>()
  for (const { id, stated } of boxes)
    for (const name of stated.inputs) {
      if (seen.has(name)) throw new StageError(placeOf(id), `string '${name}' is named twice`, 'Name it once')
      seen.add(name)
    }
}

/** A string with the fuse that its box holds for it. */
function fused(string: Circuit, boxes: readonly Box[]): Circuit {
  const box = boxes.find(({ strings }) => strings.includes(string))
  if (box === undefined) return string
  const { poles_fused: poles, fuse_a: chosenA } = box.stated
  if (poles === 'none') return { ...string, deviceA: null }
  // PV fuses are made in more ratings than the standard ones, so one that is large enough stays as it is.
  const requiredA = CONTINUOUS_FACTOR * string.continuousA
  const deviceA = chosenA !== undefined && chosenA >= requiredA ? chosenA : string.smallestDeviceA
  return { ...string, deviceA, groundingDeviceA: deviceA }
}

/**
 * The circuit from a box to the inverter: the sum of its strings.
 *
 * @source NEC 690.8(A)(2), sum of parallel source circuits; 690.8(B), 125 percent
 */
function outputCircuit(id: string, stated: DcCombiner, strings: readonly Circuit[]): Circuit {
  const where = `electrical.dc_combiners.${id}`
  const sum = (of: (circuit: Circuit) => Amperes): Amperes => strings.reduce((total, string) => total + of(string), 0)
  const continuousA = sum((string) => string.continuousA)
  const deviceA = nextStandardDeviceA(CONTINUOUS_FACTOR * continuousA, where)
  const arrays: Record<string, number> = {}
  for (const string of strings)
    for (const [array, count] of Object.entries(string.arrays)) arrays[array] = (own(arrays, array) ?? 0) + count
  return {
    id,
    kind: 'dc_output',
    where,
    voltageV: Math.min(...strings.map((string) => string.voltageV)),
    continuousA,
    operatingA: sum((string) => string.operatingA),
    deviceA: null,
    groundingDeviceA: deviceA,
    smallestDeviceA: deviceA,
    maxDeviceA: undefined,
    makerRisePct: undefined,
    inverterId: undefined,
    inverter: undefined,
    inverters: 0,
    trunk: undefined,
    arrays,
    string: undefined,
    combiner: { stated, strings },
  }
}
