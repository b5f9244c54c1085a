import type { Spot } from './read-sheet.js'

/** One record of a DXF file: what begins with a group 0. */
export interface DxfRecord {
  readonly type: string
  /** Group code and value as they stand in the file. */
  readonly groups: readonly (readonly [code: number, value: string])[]
}

/** A file in sections, as the rules of the format say, with nothing made of it. */
export interface DxfFile {
  readonly pairs: readonly (readonly [code: number, value: string])[]
  readonly header: ReadonlyMap<string, readonly (readonly [number, string])[]>
  readonly tables: readonly DxfRecord[]
  readonly blocks: readonly DxfRecord[]
  readonly entities: readonly DxfRecord[]
  readonly objects: readonly DxfRecord[]
}

export function readDxf(text: string): DxfFile {
  const lines = text.split('\n')
  if (lines.pop() !== '' || lines.length % 2 !== 0) throw new Error('no whole pairs of lines')
  const pairs = Array.from({ length: lines.length / 2 }, (_, index) => {
    const code = lines[2 * index] ?? ''
    if (!/^ *\d+$/u.test(code)) throw new Error(`no group code: ${code}`)
    return [Number(code), lines[2 * index + 1] ?? ''] as const
  })
  const section = (name: string): (readonly [number, string])[] => {
    const from = pairs.findIndex(
      ([code, value], at) => code === 2 && value === name && pairs[at - 1]?.[1] === 'SECTION',
    )
    const to = pairs.findIndex(([code, value], at) => at > from && code === 0 && value === 'ENDSEC')
    if (from < 0 || to < 0) throw new Error(`no section ${name}`)
    return pairs.slice(from + 1, to)
  }
  const header = new Map<string, (readonly [number, string])[]>()
  let name = ''
  for (const pair of section('HEADER')) {
    if (pair[0] === 9) header.set((name = pair[1]), [])
    else header.get(name)?.push(pair)
  }
  return {
    pairs,
    header,
    tables: records(section('TABLES')),
    blocks: records(section('BLOCKS')),
    entities: records(section('ENTITIES')),
    objects: records(section('OBJECTS')),
  }
}

function records(pairs: readonly (readonly [number, string])[]): DxfRecord[] {
  const found: { type: string; groups: (readonly [number, string])[] }[] = []
  for (const pair of pairs) {
    if (pair[0] === 0) found.push({ type: pair[1], groups: [] })
    else found.at(-1)?.groups.push(pair)
  }
  return found
}

export const all = (record: DxfRecord, code: number): string[] =>
  record.groups.filter(([each]) => each === code).map(([, value]) => value)

export function one(record: DxfRecord, code: number): string {
  const [value] = all(record, code)
  if (value === undefined) throw new Error(`${record.type} without group ${code}`)
  return value
}

export const numberOf = (record: DxfRecord, code: number): number => Number(one(record, code))

/** The points that a group and the one after its tenfold give, in their order. */
export const pointsOf = (record: DxfRecord, code: number): Spot[] =>
  all(record, code).map((x, index) => ({ x: Number(x), y: Number(all(record, code + 10)[index]) }))

/** Names of the records of a table. */
export const tableNames = (file: DxfFile, type: string): string[] =>
  file.tables.filter((each) => each.type === type).map((each) => one(each, 2))

/** Entities of each block by its name. */
export function blockEntities(file: DxfFile): Map<string, DxfRecord[]> {
  const found = new Map<string, DxfRecord[]>()
  let name: string | undefined
  for (const record of file.blocks) {
    if (record.type === 'BLOCK') found.set((name = one(record, 2)), [])
    else if (record.type === 'ENDBLK') name = undefined
    else if (name !== undefined) found.get(name)?.push(record)
  }
  return found
}

/** Points that an entity reaches to, its block with it. */
export function reachOf(record: DxfRecord, blocks: ReadonlyMap<string, readonly DxfRecord[]>): Spot[] {
  switch (record.type) {
    case 'LINE':
      return [...pointsOf(record, 10), ...pointsOf(record, 11)]
    case 'LWPOLYLINE':
      return pointsOf(record, 10)
    case 'CIRCLE': {
      const [[center], radius] = [pointsOf(record, 10), numberOf(record, 40)]
      return center === undefined ? [] : around(center, radius)
    }
    case 'TEXT': {
      const [[from], [to], high, turn] = [
        pointsOf(record, 10),
        pointsOf(record, 11),
        numberOf(record, 40),
        (numberOf(record, 50) * Math.PI) / 180,
      ]
      if (from === undefined || to === undefined) return []
      const up = { x: -high * Math.sin(turn), y: high * Math.cos(turn) }
      return [from, to, ...[from, to].map(({ x, y }) => ({ x: x + up.x, y: y + up.y }))]
    }
    case 'HATCH': {
      // The first point is that of the level.
      const points = pointsOf(record, 10).slice(1)
      const bulges = all(record, 42)
      if (bulges.length === 0) return points
      const [a, b] = points
      if (a === undefined || b === undefined || points.length !== 2) throw new Error('a round hatch of no two points')
      return around({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, Math.hypot(a.x - b.x, a.y - b.y) / 2)
    }
    case 'INSERT': {
      const [at] = pointsOf(record, 10)
      const within = blocks.get(one(record, 2))?.flatMap((each) => reachOf(each, blocks)) ?? []
      return at === undefined ? [] : within.map(({ x, y }) => ({ x: x + at.x, y: y + at.y }))
    }
    case 'DIMENSION':
      return blocks.get(one(record, 2))?.flatMap((each) => reachOf(each, blocks)) ?? []
    default:
      throw new Error(`an entity that is not expected: ${record.type}`)
  }
}

const around = ({ x, y }: Spot, radius: number): Spot[] => [
  { x: x - radius, y: y - radius },
  { x: x + radius, y: y + radius },
]

/**
 * What a CAD program shows for the text of a TEXT entity: carets, then characters by number, then codes of two percent signs.
 * Source: public DXF reference of the format's maker, "Control codes in text", and its notes on `\U+` and `^`.
 */
export function shown(text: string): string {
  const loaded = text
    .replaceAll(/\^(.)/gu, (_, sign: string) => (sign === ' ' ? '^' : String.fromCharCode(sign.charCodeAt(0) - 64)))
    .replaceAll(/\\U\+([0-9A-F]{4})/giu, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
  const codes: Readonly<Record<string, string>> = { d: '°', p: '±', c: '⌀', '%': '%', u: '', o: '' }
  return loaded.replaceAll(/%%(?:(\d{3})|([dpcuo%]))/giu, (_, number: string | undefined, sign: string) =>
    number === undefined ? (codes[sign.toLowerCase()] ?? '') : String.fromCharCode(Number(number)),
  )
}
