import { closeSync, fstatSync, readSync } from 'node:fs'
import { LARGEST_TABLE_BYTES, MOST_HOUSES, openRegular } from '../project/index.js'
import { sayBuild, sha256Of } from '../seal/index.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import { readFleetLine, type FleetLine } from './fleet-line.js'
import { expandPattern, isPattern } from './glob.js'
import { readLines, type Line } from './read-lines.js'
import { EXIT_OF_STATUS, type ExitOfFleet, type FleetStatus } from './types.js'

/** More are counted and not told. */
const MOST_TOLD = 20
/** No fleet is run in so many parts, and each is held open while they are put together. */
const MOST_PARTS = 1000

/** The parts of a fleet, found to be all of one whole. */
export interface MergedParts {
  readonly rows: readonly { readonly name: string; readonly status: FleetStatus }[]
  readonly worst: ExitOfFleet
  readonly files: number
  /** The lines in the order of the fleet, each with its line feed, read as they are needed. */
  readonly lines: () => Iterable<string>
  readonly close: () => void
}

interface Place extends Line {
  readonly file: number
  /** `part-2.jsonl:3` */
  readonly at: string
  readonly name: string
  readonly status: FleetStatus
  /** Of the line as it was checked. */
  readonly sha256: string
}

/**
 * Puts the parts of a fleet together, given in any order: each row once, all of one fleet and of one build.
 *
 * @param named Files of `--jsonl`, or patterns for them.
 * @throws FleetError with all that does not fit, before anything is written.
 */
export function mergeParts(named: readonly string[]): MergedParts {
  const paths = [...new Set(named.flatMap(filesOf))]
  if (paths.length > MOST_PARTS)
    throw new FleetError(`--merge: ${paths.length} files; at most ${MOST_PARTS} parts are put together`, 2)
  const files: number[] = []
  const close = (): void => {
    for (const file of files.splice(0)) closeSync(file)
  }
  try {
    const parts = new Parts()
    for (const path of paths) {
      const file = open(path)
      files.push(file)
      parts.read(path, file)
    }
    const places = parts.whole()
    return {
      rows: places.map(({ name, status }) => ({ name, status })),
      worst: places.reduce<ExitOfFleet>((worst, { status }) => max(worst, EXIT_OF_STATUS[status]), 0),
      files: paths.length,
      *lines() {
        for (const place of places) yield `${checkedText(place)}\n`
      },
      close,
    }
  } catch (error) {
    close()
    throw error
  }
}

class Parts {
  readonly #rows = new Map<number, Place>()
  readonly #troubles: string[] = []
  #more = 0
  #first: { readonly line: FleetLine; readonly at: string } | undefined

  read(path: string, file: number): void {
    let [number, end] = [0, 0]
    for (const { offset, length, text } of readLines(file, path)) {
      number += 1
      end = offset + length + 1
      this.#add(text, { file, offset, length, at: `${path}:${number}` })
    }
    if (fstatSync(file).size > end) this.#complain(`${path}:${number + 1}`, 'the last line is cut off')
  }

  /** @throws FleetError when something does not fit. */
  whole(): Place[] {
    const count = this.#first?.line.fleet.rows ?? 0
    if (this.#troubles.length === 0) {
      if (count === 0) throw new FleetError('--merge: there is no line in these files', 2)
      const missing = Array.from({ length: count }, (_, i) => i + 1).filter((row) => !this.#rows.has(row))
      if (missing.length > 0) {
        const says = missing.length === 1 ? 'is missing' : 'are missing'
        this.#troubles.push(`--merge: of ${count} rows ${ranges(missing)} ${says}; has every part ended?`)
      }
    }
    const [first, ...more] = this.#troubles
    if (first !== undefined) {
      const left = more.length - MOST_TOLD + this.#more
      const rest = left > 0 ? [`and ${left} more`] : []
      throw new FleetError(first, 2, undefined, [...more.slice(0, MOST_TOLD), ...rest])
    }
    return [...this.#rows].toSorted(([a], [b]) => a - b).map(([, place]) => place)
  }

  #add(text: string, where: Omit<Place, 'name' | 'status' | 'sha256'>): void {
    const read = readFleetLine(text)
    if ('trouble' in read) {
      this.#complain(where.at, read.trouble)
      return
    }
    const { line } = read
    this.#first ??= { line, at: where.at }
    const other = otherFleet(line, this.#first)
    if (other !== undefined) {
      this.#complain(where.at, other)
      return
    }
    const { row, rows } = line.fleet
    const before = this.#rows.get(row)
    if (rows > MOST_HOUSES) this.#complain(where.at, `a fleet of ${rows} rows; at most ${MOST_HOUSES} are put together`)
    else if (row > rows) this.#complain(where.at, `row ${row} of a fleet of ${rows}`)
    else if (before !== undefined) this.#complain(where.at, `row ${row} (${line.name}) stands at ${before.at} already`)
    else this.#rows.set(row, { ...where, name: line.name, status: line.status, sha256: sha256Of(text) })
  }

  #complain(at: string, message: string): void {
    if (this.#troubles.length > MOST_TOLD) this.#more += 1
    else this.#troubles.push(`${at}: ${message}`)
  }
}

function otherFleet(line: FleetLine, first: { readonly line: FleetLine; readonly at: string }): string | undefined {
  const [mine, its] = [line, first.line]
  if (mine.build !== its.build || mine.tool !== its.tool) {
    return `made by ${mine.tool}, ${sayBuild(mine.build)}; ${first.at} by ${its.tool}, ${sayBuild(its.build)}: make all parts with one`
  }
  if (mine.fleet.id === its.fleet.id && mine.fleet.rows === its.fleet.rows) return undefined
  return `of another fleet than ${first.at}: the template, the table, --set or --stages differ`
}

function filesOf(text: string): string[] {
  if (!isPattern(text)) return [text]
  const found = expandPattern(text)
  if (found.length === 0) throw new FleetError(`${text}: no file matches this pattern`, 3)
  return found
}

function open(path: string): number {
  try {
    return openRegular(path, LARGEST_TABLE_BYTES)
  } catch (error) {
    throw fileTrouble('read', path, error)
  }
}

/** @throws FleetError when it is no longer what was checked. */
function checkedText({ file, offset, length, at, sha256 }: Place): string {
  const buffer = Buffer.alloc(length)
  readSync(file, buffer, 0, length, offset)
  const text = buffer.toString('utf8')
  if (sha256Of(text) !== sha256) throw new FleetError(`${at}: changed while the parts were put together`, 3)
  return text
}

function max(a: ExitOfFleet, b: ExitOfFleet): ExitOfFleet {
  return a > b ? a : b
}

/** `3, 5 to 8` */
function ranges(numbers: readonly number[]): string {
  const spans: [from: number, to: number][] = []
  for (const number of numbers) {
    const last = spans.at(-1)
    if (last !== undefined && last[1] === number - 1) last[1] = number
    else spans.push([number, number])
  }
  const texts = spans.map(([from, to]) => (from === to ? String(from) : `${from} to ${to}`))
  return texts.length > MOST_TOLD ? `${texts.slice(0, MOST_TOLD).join(', ')} and more` : texts.join(', ')
}
