import type { MountValue, MountValues } from '../../structure/index.js'
import { plainNumber, type Block, type TableColumn } from '../layout/index.js'

const columns = (...each: readonly (readonly [string, number, 'right'?])[]): TableColumn[] =>
  each.map(([heading, share, align]) => ({ heading, share, ...(align === undefined ? {} : { align }) }))

export const psf = (value: number): string => `${plainNumber(value, 1)} psf`
export const lb = (value: number): string => plainNumber(value, 0)

export function memberTable(mounts: readonly MountValue[], member: string): Block {
  const numbers = [...new Set(mounts.map(({ rafter }) => rafter))].toSorted((a, b) => a - b)
  const sum = (own: readonly MountValue[], of: (mount: MountValue) => number): string =>
    lb(own.reduce((total, mount) => total + of(mount), 0))
  return {
    kind: 'table',
    columns: columns(
      [member, 0.1],
      ['Mounts', 0.1, 'right'],
      ['Dead lb', 0.14, 'right'],
      ['Snow lb', 0.14, 'right'],
      ['D + S lb', 0.14, 'right'],
      ['Wind down lb', 0.19, 'right'],
      ['Wind up lb', 0.19, 'right'],
    ),
    rows: numbers.map((number) => {
      const own = mounts.filter(({ rafter }) => rafter === number)
      return [
        String(number),
        String(own.length),
        sum(own, (m) => m.dead_lb),
        sum(own, (m) => m.snow_lb),
        sum(own, (m) => m.dead_lb + m.snow_lb),
        sum(own, (m) => m.wind_down_lb),
        sum(own, (m) => m.wind_up_lb),
      ]
    }),
  }
}

export function mountTable(mounts: readonly MountValue[], member: string): Block {
  return {
    kind: 'table',
    columns: columns(
      ['Mount', 0.22],
      [member, 0.07, 'right'],
      ['x in', 0.08, 'right'],
      ['y in', 0.08, 'right'],
      ['Zone', 0.07],
      ['Dead lb', 0.08, 'right'],
      ['Snow lb', 0.08, 'right'],
      ['Wind down', 0.08, 'right'],
      ['Wind up', 0.08, 'right'],
      ['ASD down', 0.08, 'right'],
      ['ASD up', 0.08, 'right'],
    ),
    rows: mounts.map((mount) => [
      mount.id,
      String(mount.rafter),
      plainNumber(mount.x_in, 1),
      plainNumber(mount.y_in, 1),
      mount.zone,
      lb(mount.dead_lb),
      lb(mount.snow_lb),
      lb(mount.wind_down_lb),
      lb(mount.wind_up_lb),
      lb(mount.down_lb),
      lb(mount.uplift_lb),
    ]),
  }
}

/** What the checks of rafters gave; none under trusses. */
export function checkTable(values: MountValues, plane: string): Block[] {
  const rows = values.rafters.filter((row) => row.plane === plane)
  if (rows.length === 0) return []
  const worst = (['bending', 'shear', 'bearing', 'deflection'] as const).flatMap((check) => {
    const own = rows.filter((row) => row.check === check)
    return own.length === 0 ? [] : [own.reduce((a, b) => (b.ratio > a.ratio ? b : a))]
  })
  return [
    { kind: 'heading', text: `Plane ${plane}: hardest rafter by the wood standard` },
    {
      kind: 'table',
      columns: columns(
        ['Check', 0.15],
        ['Rafter', 0.1],
        ['Under', 0.4],
        ['At ft', 0.1, 'right'],
        ['Used', 0.25, 'right'],
      ),
      rows: worst.map((row) => [
        row.check,
        String(row.rafter),
        row.load_combination,
        plainNumber(row.at_ft, 1),
        `${plainNumber(100 * row.ratio, 0)} %`,
      ]),
    },
  ]
}
