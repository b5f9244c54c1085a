import { KEYS } from './values.mjs'

const NUMBERS = [0, -1, 1, 0.5, 2, 1e-9, 1e9, 1e300, -1e300, 90, 180, 360, 1.5]
const OTHERS = [null, true, false, '', ' ', 'text', [], {}, [0], [[]], { a: 1 }]

/** Changes one to four places of a tree, so that the file stays readable and its values go wrong. */
export function mutateData(chance, data, donors) {
  const copy = structuredClone(data)
  for (let left = chance.few(4); left > 0; left--) changeOne(chance, copy, donors)
  return copy
}

function changeOne(chance, data, donors) {
  const holders = []
  collect(data, holders)
  if (holders.length === 0) return
  const holder = chance.of(holders)
  const keys = Object.keys(holder)
  if (keys.length === 0) return
  const key = chance.of(keys)
  const value = holder[key]
  switch (chance.below(12)) {
    case 0:
      if (Array.isArray(holder)) holder.splice(Number(key), 1)
      else delete holder[key]
      return
    case 1:
      holder[key] = structuredClone(chance.of(OTHERS))
      return
    case 2:
      if (Array.isArray(holder)) holder.push(structuredClone(value))
      else
        Object.defineProperty(holder, chance.of(KEYS), {
          value: structuredClone(value),
          enumerable: true,
          configurable: true,
          writable: true,
        })
      return
    case 3: {
      // Take something from another place or another project.
      const pool = []
      collect(chance.of(donors), pool)
      const donor = chance.of(pool)
      const from = chance.of(Object.keys(donor).length === 0 ? [undefined] : Object.keys(donor))
      if (from !== undefined && !Array.isArray(holder)) holder[from] = structuredClone(donor[from])
      return
    }
    default:
      holder[key] = nudged(chance, value)
  }
}

function nudged(chance, value) {
  if (typeof value === 'number') {
    const changed = [
      chance.of(NUMBERS),
      value * chance.of([-1, 0.01, 0.5, 0.9, 1.1, 2, 10]),
      value + chance.of([-1, 1, 0.25]),
      value * (0.7 + 0.6 * chance.next()),
    ]
    return chance.of(changed)
  }
  if (typeof value === 'boolean') return !value
  if (typeof value === 'string')
    return chance.of([
      value.toUpperCase(),
      `${value} `,
      `${value}x`,
      value.slice(1),
      'other',
      '=cmd()',
      '\u001b[31mred',
    ])
  // A copy: one `{}` at two places could come to hold itself, and would change what later inputs get.
  return structuredClone(chance.of([...OTHERS, value]))
}

function collect(node, holders, depth = 0) {
  if (typeof node !== 'object' || node === null || depth > 30) return
  holders.push(node)
  for (const value of Object.values(node)) collect(value, holders, depth + 1)
}
