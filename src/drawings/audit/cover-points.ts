import { CAP_HEIGHT, flattenSheet, POINTS_PER_INCH, type Sheet } from '../model/index.js'
import { plainNumber } from '../layout/index.js'
import { systemSize } from '../system-size.js'
import { equipmentRows } from '../sheets/equipment-rows.js'
import { allOn, hasWords, missing, present, sheetsOf, type AuditFacts, type Judge } from './verdict.js'

/** Least type on plans where the authority says nothing else, points. @source plan format page of San Francisco CA, read: "10 pt or larger" */
const LEAST_TYPE_PT = 10

/** Points of the cover and of what every sheet bears. */
export const COVER_POINTS: Readonly<Record<string, Judge>> = {
  'project-data': (facts) => {
    const { modules, dcKw, acKw } = systemSize(facts.input)
    const inverters = equipmentRows(facts.input).filter(([item]) => item === 'Inverter')
    const { title, site } = facts.input.project
    return allOn(facts, 'G', [
      ['name', title],
      ['address', site.address],
      ['scope', 'SCOPE OF WORK'],
      ['kW DC', `${plainNumber(dcKw)} kW DC`],
      ['kW AC', acKw === undefined ? undefined : `${plainNumber(acKw)} kW AC`],
      ['number of modules', `${modules} module`],
      ...(inverters.length === 0
        ? ([['number of inverters', undefined]] as const)
        : inverters.map(([, count = '', name = '']) => ['number of inverters', `INVERTER ${count} ${name}`] as const)),
    ])
  },
  parcel: (facts) => allOn(facts, 'G', [['parcel number', facts.input.project.site.parcel]]),
  codes: (facts) => {
    const { codes } = facts.input.project
    return allOn(facts, 'G', [
      ['electrical code', codes?.electrical],
      ['residential or fire code', codes?.residential],
      ['loads', codes?.loads],
      ['wood', codes?.wood],
      ...(codes?.local_amendments ?? []).map((each) => ['local amendment', each] as const),
    ])
  },
  'design-criteria': (facts) => {
    const { wind, snow } = facts.input.project.structure ?? {}
    return allOn(facts, 'GE', [
      ['wind', wind?.basic_speed_mph === undefined ? undefined : `${wind.basic_speed_mph} mph`],
      ['exposure', wind?.exposure === undefined ? undefined : `exposure ${wind.exposure}`],
      ['snow', snow?.ground_psf === undefined ? undefined : `${snow.ground_psf} psf`],
      ['temperatures', /MINIMUM DRY-BULB|LOWEST EXPECTED AMBIENT/u],
    ])
  },
  'sheet-index': (facts) => {
    const covers = facts.sheets.filter(({ id }) => id.startsWith('G-'))
    const listed = (id: string): boolean =>
      covers.some(({ words }) => words.includes('SHEET INDEX') && (words.includes(` ${id} `) || inRange(words, id)))
    const unlisted = facts.sheets.filter(({ id }) => !listed(id)).map(({ id }) => id)
    return unlisted.length === 0
      ? present(
          covers.slice(0, 1).map(({ id }) => id),
          `index of all ${facts.sheets.length} sheets`,
        )
      : missing(`not in the index: ${unlisted.join(', ')}`)
  },
  'names-on-sheets': (facts) => {
    const { owner, installer, preparer, prepared_by_owner: byOwner } = facts.input.project.parties ?? {}
    const needed: (readonly [string, string | undefined])[] = [
      ['owner', owner?.name],
      ...(installer === undefined && byOwner === true
        ? []
        : ([
            ['contractor', installer?.name],
            ["contractor's licence", installer?.license],
          ] as const)),
      ['preparer', byOwner === true ? 'the owner' : preparer?.name],
    ]
    return onEvery(facts, needed)
  },
  'title-block': (facts) => {
    const { document } = facts.input.project
    return onEvery(facts, [
      ['date', document?.date],
      ['revision', document?.revision ?? document?.revisions?.at(-1)?.number],
      ['number of sheets', /SHEET \d+ OF \d+/u],
    ])
  },
  'stamp-room': (facts) => onEvery(facts, [['room for stamps', 'ROOM FOR STAMPS']]),
  lettering: ({ input, sheets }) => {
    const least = Math.min(...sheets.map(({ sheet }) => leastCapitalIn(sheet)))
    const askedIn = input.authority?.least_text_in ?? (LEAST_TYPE_PT * CAP_HEIGHT) / POINTS_PER_INCH
    const told = `lowest capitals ${plainNumber(least, 3)} in of ${plainNumber(askedIn, 3)} in`
    // A hundredth of a point is what rounding leaves.
    if (least < askedIn - 0.01 / POINTS_PER_INCH) return missing(told)
    return present(['every sheet'], told)
  },
}

/** Whether a continuation lies in a row of the index such as `S-601 TO S-601-8`. */
function inRange(words: string, id: string): boolean {
  const found = /^([A-Z]-\d+)-(\d+)$/u.exec(id)
  if (found === null) return false
  const [, first = '', number = ''] = found
  const last = new RegExp(` ${first} TO -(\\d+) `, 'u').exec(words)?.[1]
  return last !== undefined && Number(number) <= Number(last)
}

/** Present when each of the words stands on every sheet. */
function onEvery(facts: AuditFacts, needed: readonly (readonly [what: string, words: string | RegExp | undefined])[]) {
  const lacking = needed.flatMap(([what, words]) => {
    if (words === undefined) return [`${what}: not stated`]
    // A name that is too long for the title strip ends there in an ellipsis, and the cover tells it whole.
    const start = typeof words === 'string' ? words.slice(0, 24) : words
    const without = facts.sheets.filter((sheet) => !hasWords(sheet, start)).map(({ id }) => id)
    return without.length === 0 ? [] : [`${what}: not on ${without.join(', ')}`]
  })
  if (lacking.length > 0) return missing(lacking.join('; '))
  return present(['every sheet'], needed.map(([what]) => what).join(', '))
}

/** Lowest capitals of a sheet, in. */
function leastCapitalIn(sheet: Sheet): number {
  const sizes = flattenSheet(sheet).marks.flatMap((mark) =>
    mark.kind === 'text' && mark.text.trim() !== '' ? [mark.sizePt] : [],
  )
  return (Math.min(...sizes) * CAP_HEIGHT) / POINTS_PER_INCH
}

/** Sheets with a drawing to scale of a plan. */
export const plansOf = (facts: AuditFacts) => sheetsOf(facts, 'CA').filter(({ toScale }) => toScale)
