import type { Primitive } from '../model/index.js'
import { combiner } from './one-line-combiner.js'
import { drawConnection, drawGrounds, panelNoteDepthPt } from './one-line-connection.js'
import { supplyPanelPt } from './one-line-panel.js'
import { groundingDepthPt } from './one-line-grounding.js'
import { inverterOutputs, inverterStepPt } from './one-line-inverter.js'
import { lowestWordPt, type DiagramJob, type Output } from './one-line-job.js'
import { BELOW_WIRE_PT, drawSource, rowHeightPt } from './one-line-row.js'
import { drawShutdown } from './one-line-shutdown.js'
import type { OneLineSource } from './one-line-sources.js'

/** Room above the first row, and least distance from the top to the first wire into the panel, points. */
const HEAD_PT = 26
const CONNECTION_PT = { load_side_breaker: 126, feeder_tap: 168, supply_side: 168 } as const
const LANDING_PT = 56

/** Least distance from the top to the first wire: the short form draws its panel beside the rows. */
function connectionPt(job: DiagramJob): number {
  const { connection, distribution } = job.input.project.electrical ?? {}
  if (distribution === undefined && connection?.kind === 'supply_side')
    return Math.max(CONNECTION_PT.supply_side, supplyPanelPt(job) + 10)
  return distribution === undefined ? CONNECTION_PT[connection?.kind ?? 'load_side_breaker'] : LANDING_PT
}

/** The rows of the diagram with their collector and, on the first sheet, the connection to the house; and how far down it goes. */
export function oneLineDiagram(
  job: DiagramJob,
  sources: readonly OneLineSource[],
): { readonly drawn: readonly Primitive[]; readonly bottom: number } {
  const { box, places } = job
  const heights = sources.map((source) => rowHeightPt(source, box.width, places, job.withConnection) + job.spreadPt)
  const wireAt = (height: number): number => (places.stacked ? height - BELOW_WIRE_PT - job.spreadPt / 2 : height / 2)
  const gaps = sources.map((_, index) => gapBelowPt(job, sources, index, heights, wireAt))
  const sumTo = (index: number): number =>
    heights.slice(0, index).reduce((sum, height, at) => sum + height + (gaps[at] ?? 0), 0)
  const rowsFrom = (top: number): { source: OneLineSource; y: number }[] =>
    sources.map((source, index) => ({
      source,
      y: top + sumTo(index) + wireAt(heights[index] ?? 0),
    }))
  // The first wire must reach the panel below the breakers that are in it already.
  const first = Math.min(...gather(job, rowsFrom(box.y + HEAD_PT)).map((output) => output.y))
  const top = box.y + HEAD_PT + (job.withConnection ? Math.max(0, box.y + connectionPt(job) - first) : 0)
  const rows = rowsFrom(top)
  const bottom = top + sumTo(sources.length)
  const outputs = gather(job, rows)
  const ys = outputs.map((output) => output.y)
  const centre = (Math.min(...ys) + Math.max(...ys)) / 2
  const connection = drawConnection(job, outputs, centre)
  const groundY = Math.max(
    lowestWordPt([...outputs.flatMap((output) => output.drawn), ...connection]) + 6,
    bottom + 14,
    centre + 96,
    Math.max(...ys) + (job.further > 0 ? 64 : 40),
    // The words under a combiner that goes on, or under a string inverter.
    lowest(rows) + (job.further > 0 || rows.some(({ source }) => source.unit !== undefined) ? 66 : 0),
  )
  const drawn = [
    ...rows.flatMap(({ source, y }) => drawSource(job, source, y, groundY)),
    ...outputs.flatMap((output) => output.drawn),
    ...connection,
    ...drawGrounds(job, outputs, centre, groundY),
    ...drawShutdown(job, rows, outputs),
  ]
  return {
    drawn,
    bottom: job.withConnection ? groundY + Math.max(34, groundingDepthPt(job), panelNoteDepthPt(job)) : bottom,
  }
}

/** Room between the rows of two inverters for the words of the upper one and the name of the lower one, points. */
function gapBelowPt(
  job: DiagramJob,
  sources: readonly OneLineSource[],
  index: number,
  heights: readonly number[],
  wireAt: (height: number) => number,
): number {
  const [unit, next] = [sources[index]?.unit, sources[index + 1]?.unit]
  if (unit === undefined || next === undefined || unit === next) return 0
  const [height = 0, below = 0] = heights.slice(index, index + 2)
  return Math.max(0, inverterStepPt(job, unit) - (height - wireAt(height)) - wireAt(below))
}

function lowest(rows: readonly { readonly y: number }[]): number {
  return Math.max(...rows.map((row) => row.y))
}

/** Brings the rows together: strings into their inverters, branches and inverter outputs into the combiner. */
function gather(job: DiagramJob, rows: readonly { readonly source: OneLineSource; readonly y: number }[]): Output[] {
  const { wiring } = job
  const sides = inverterOutputs(job, rows)
  const branches = rows
    .filter(({ source }) => source.unit === undefined)
    .map(({ source, y }): Output => ({
      circuitId: source.circuit.id,
      x: job.box.x + job.box.width * job.places.combiner,
      y,
      breakerA: source.circuit.breaker_a,
      drawn: [],
    }))
  const all = [...sides, ...branches]
  const combined = wiring.circuits.find((circuit) => circuit.kind === 'ac_combined_output')
  return combined === undefined || !job.withConnection ? all : [combiner(job, all, combined)]
}
