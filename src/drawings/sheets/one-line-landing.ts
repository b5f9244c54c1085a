import { inCapitals } from '../model/index.js'
import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { landingsOf } from '../tree/tree-parts.js'
import { joinFlag } from '../tree/tree-symbols.js'
import { drawDisconnect } from './one-line-disconnect.js'
import { groundLine } from './one-line-grounding.js'
import { spread, type DiagramJob, type Output } from './one-line-job.js'

const SIZE = TYPE_PT.small

/** From the collected outputs over the disconnect to a flag that stands again where they land in the installation. */
export function drawLanding(job: DiagramJob, outputs: readonly Output[]): Primitive[] {
  const { box, places, wiring, input } = job
  const [x, flagX] = [box.x + box.width * places.disconnect, box.x + box.width * places.flag]
  const to = inCapitals(landingTitle(input.project, wiring))
  const letters = new Map(landingsOf(wiring).map(({ circuit, letter }) => [circuit, letter]))
  const wires = outputs.flatMap((output, index) => {
    const { before, after } = tagsOf(job, output, index)
    return [
      line(output.x, output.y, flagX, output.y, { pen: 'medium' }),
      ...spread(before, output.x + 2, x - 24, output.y),
      ...spread(after, x + 28, flagX, output.y),
      ...joinFlag(flagX, output.y, letters.get(output.circuitId) ?? ''),
      label(flagX + 28, output.y, `TO ${to}`, {
        sizePt: SIZE,
        face: 'bold',
        valign: 'middle',
        maxWidthPt: box.x + box.width - flagX - 28,
      }),
    ]
  })
  return [...wires, ...drawDisconnect(job, outputs, x, flagX)]
}

/** Grounds of the PV system up to where they go on. */
export function landingGround(job: DiagramJob, groundY: number): Primitive[] {
  const { box, places, wiring, input } = job
  const flagX = box.x + box.width * places.flag
  return [
    ...groundLine(job, groundY, flagX),
    label(flagX + 4, groundY, groundWords(input.project, wiring), {
      sizePt: SIZE,
      valign: 'middle',
      maxWidthPt: box.x + box.width - flagX - 4,
    }),
  ]
}

function groundWords(project: Project, wiring: WiringValues): string {
  return project.electrical?.connection?.kind === 'supply_side'
    ? 'to the grounding electrode of the house'
    : `to the equipment ground of ${landingTitle(project, wiring)}`
}

/** What the PV system lands on, as the drawings call it. */
export function landingTitle(project: Project, wiring: WiringValues): string {
  const { connection, distribution } = project.electrical ?? {}
  if (connection?.kind === 'supply_side') return 'service conductors'
  const id = connection?.at ?? Object.keys(distribution?.panels ?? {})[0] ?? 'panel'
  const node = wiring.distribution.find((each) => each.id === id)
  return node === undefined ? 'Main panel' : nodeTitle(node)
}

/** Tags of the output circuit before the disconnect and after it; those ahead of a supply-side device stand after it. */
function tagsOf({ wiring, tags }: DiagramJob, output: Output, index: number) {
  const tap = wiring.circuits.find(({ kind }) => kind === 'ac_supply_tap')
  const own = output.circuitId === 'output' ? tags.filter(({ circuits }) => circuits.includes('output')) : []
  if (tap === undefined) {
    const half = Math.ceil(own.length / 2)
    return { before: own.slice(0, half), after: own.slice(half) }
  }
  return { before: own, after: index === 0 ? tags.filter(({ circuits }) => circuits.includes(tap.id)) : [] }
}
