import { didYouMean, pathTrouble, type Complaint } from '../../../project/index.js'
import { TOTALS } from '../../totals.js'
import { splitSource } from '../data/index.js'
import type { FormMapping, MappedField, MappedPlace } from './form-mapping-types.generated.js'
import { placeEntry } from './place-entry.js'

type Key = keyof MappedField

/** Keys that only say how a value that comes from somewhere is written. */
const ONLY_WITH_FROM = ['equals', 'translate', 'format', 'optional'] as const satisfies readonly Key[]

/** What is wrong with a mapping whose parts are each valid by the schema, whatever the form. */
export function checkMapping(mapping: FormMapping): Complaint[] {
  const first = new Map<string, number>()
  const complaints = (mapping.fields ?? []).flatMap((entry, index) => {
    const found = checkEntry(entry, ['fields', index], `'${entry.field}'`)
    const before = first.get(entry.field)
    if (before !== undefined) {
      found.push(at(['fields', index, 'field'], `'${entry.field}' is filled by entry ${before} of the list already`))
    }
    first.set(entry.field, before ?? index)
    return found
  })
  for (const [index, name] of (mapping.must_stay_empty ?? []).entries()) {
    if (first.has(name)) complaints.push(at(['must_stay_empty', index], `'${name}' must stay empty and is filled too`))
  }
  for (const [index, name] of (mapping.by_hand ?? []).entries()) {
    if (first.has(name))
      complaints.push(at(['by_hand', index], `'${name}' is left to be filled by hand and is filled too`))
  }
  if (mapping.fields === undefined && mapping.place === undefined) {
    complaints.push(at([], 'nothing says what goes where; state fields, or place for pages without fields'))
  }
  return [...complaints, ...checkPlaces(mapping)]
}

function checkPlaces({ place: places = [] }: FormMapping): Complaint[] {
  return places.flatMap((place, index) => {
    const path = ['place', index] as const
    const { name, mark } = place
    const found = checkEntry(placeEntry(place), path, `'${name}'`)
    const say = (key: keyof MappedPlace, message: string): void => void found.push(at([...path, key], message))
    if (mark === true) {
      for (const key of ['width_in', 'lines', 'format', 'translate'] as const)
        if (place[key] !== undefined) say(key, `${key} is for a text, and '${name}' is a mark`)
    } else {
      if (place.width_in === undefined)
        found.push(at(path, `'${name}' has no width_in, so that nobody knows whether the text fits; state it`))
      if (place.equals !== undefined) say('equals', 'equals is for a mark; state mark: true, or leave it out')
    }
    return found
  })
}

function checkEntry(entry: MappedField, path: readonly (string | number)[], name: string): Complaint[] {
  const complaints: Complaint[] = []
  const say = (key: Key, message: string): void => void complaints.push(at([...path, key], message))
  const ways = (['from', 'text'] as const).filter((key) => entry[key] !== undefined)
  if (ways.length === 2) say('text', 'from and text are both stated; state one of them')
  if (ways.length === 0 && entry.on === undefined) {
    complaints.push(at(path, `nothing says what goes into ${name}; state from, text or on`))
  }
  if (entry.text !== undefined && entry.on !== undefined) say('on', 'on and text are both stated; state one of them')
  if (entry.from === undefined) {
    for (const key of ONLY_WITH_FROM) if (entry[key] !== undefined) say(key, `${key} has no meaning without from`)
  } else {
    const wrong = sourceTrouble(entry.from)
    if (wrong !== undefined) say('from', wrong)
  }
  if (entry.equals !== undefined && (entry.translate !== undefined || entry.format !== undefined)) {
    say('equals', 'equals compares the value itself; state it without translate and format')
  }
  if (entry.translate !== undefined && entry.format !== undefined) {
    say('translate', 'translate and format are both stated; state one of them')
  }
  const { date, ...ofNumbers } = entry.format ?? {}
  if (date !== undefined && Object.keys(ofNumbers).length > 0) {
    say('format', `date is for days and ${Object.keys(ofNumbers).join(', ')} for numbers; state one kind`)
  }
  return complaints
}

/** What is wrong with where a value is to come from; undefined when a value may be there. */
function sourceTrouble(from: string): string | undefined {
  const [source, path] = splitSource(from)
  if (source === 'project') return pathTrouble(path)
  if (source !== 'totals' || Object.hasOwn(TOTALS, path)) return undefined
  const known = Object.keys(TOTALS)
  const near = didYouMean(path, known)
  return `there is no total '${path}'${near === '' ? `; known: ${known.join(', ')}` : near}`
}

const at = (segments: Complaint['segments'], message: string): Complaint => ({ segments, at: 'value', message })
