import { inCapitals } from '../model/index.js'
import { label, line, plainNumber, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { bondingOf } from '../diagram/bonding.js'
import { breakerSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { landingTitle } from '../sheets/one-line-landing.js'
import type { OneLineSource } from '../sheets/one-line-sources.js'
import { landingsOf } from '../tree/tree-parts.js'
import { dot, joinFlag } from '../tree/tree-symbols.js'
import { busesFrom, BUS_STEP_PT, drawBuses, toBuses } from './buses.js'
import { drawDisconnect, type Through } from './pv-disconnect.js'
import { conductorsOf, drawInverter, drawRow, inSeries, rowPlace, type Leaving, type PvJob } from './sources.js'
import { bundle, poles, run, type Wire } from './wires.js'

const SIZE = TYPE_PT.small

/** The PV system from its modules to flags with the letters of where it lands; and how far down it goes. */
export function drawPvSystem(
  job: PvJob,
  sources: readonly OneLineSource[],
  { withConnection, further }: { readonly withConnection: boolean; readonly further: number },
): { readonly drawn: readonly Primitive[]; readonly bottom: number } {
  const { box, wiring } = job
  const places = sources.map((source) => rowPlace(job, source))
  const topOf = (index: number): number =>
    box.y + 10 + places.slice(0, index).reduce((sum, { heightPt }) => sum + heightPt, 0)
  const rows = sources.map((source, index) => ({
    source,
    ...drawRow(job, source, topOf(index) + (places[index]?.middlePt ?? 0)),
  }))
  const bottom = topOf(sources.length) + 10
  const units = [...new Set(sources.flatMap(({ unit }) => unit ?? []))]
  const inverters = units.map((unit) =>
    drawInverter(
      job,
      unit,
      rows
        .filter(({ source, leaving }) => source.unit === unit && leaving.wires.length > 0)
        .map(({ leaving }) => leaving),
    ),
  )
  const outputs = [
    ...inverters.flatMap(({ leaving }) => leaving ?? []),
    ...rows.filter(({ source }) => source.unit === undefined).map(({ leaving }) => leaving),
  ].toSorted((a, b) => a.y - b.y)
  const combined = wiring.circuits.find(({ kind }) => kind === 'ac_combined_output')
  const collected = combined === undefined || !withConnection ? undefined : drawCombiner(job, outputs, combined.id)
  if (!withConnection) {
    const to = combined === undefined ? 'to its disconnect' : 'to the AC combiner'
    return {
      drawn: [...rows, ...inverters]
        .flatMap(({ drawn }) => drawn)
        .concat(
          outputs.flatMap(({ x, y }) => [
            line(x, y - 22, x, y + 22, { pen: 'medium' }),
            label(x + 5, y, `${to}, sheet E-605`, { sizePt: SIZE, valign: 'middle' }),
          ]),
        ),
      bottom,
    }
  }
  const leaving = collected === undefined ? outputs : [collected.leaving]
  return {
    drawn: [
      ...rows.flatMap(({ drawn }) => drawn),
      ...inverters.flatMap(({ drawn }) => drawn),
      ...(collected?.drawn ?? []),
      ...drawOutputs(job, leaving),
      ...arrayGround(job, bottom),
      ...(further === 0
        ? []
        : [
            label(box.x + box.width, bottom + 12, `and ${further} further circuits, on the sheets that follow`, {
              sizePt: SIZE,
              align: 'right',
              valign: 'middle',
            }),
          ]),
    ],
    bottom: bottom + 22,
  }
}

/** The combiner panel: a breaker with its poles for every row, busbars, and the output at the middle. */
function drawCombiner(
  { box, across, slots, wiring, input }: PvJob,
  rows: readonly Leaving[],
  combinedId: string,
): { drawn: Primitive[]; leaving: Leaving } {
  const circuit = wiring.circuits.find(({ id }) => id === combinedId)
  if (circuit === undefined) throw new Error('no combined output')
  const x = box.x + box.width * across.combiner
  const buses = busesFrom(x + 40, slots.phases)
  const width = 40 + buses.wires.length * BUS_STEP_PT + 6
  const ys = rows.map((row) => row.y)
  const [top, bottom] = [Math.min(...ys) - slots.halfPt - 9, Math.max(...ys) + slots.halfPt + 9]
  const y = (top + bottom) / 2
  const out = wiring.conductors.find(({ tag, circuits }) => /^\d/u.test(tag) && circuits.includes(combinedId))
  const lines: readonly Wire[] = slots.phases === 3 && circuit.lines === 'ABC' ? ['L1', 'L2', 'L3'] : ['L1', 'L2']
  const wires: readonly Wire[] = [
    ...lines,
    ...((out?.count.neutral ?? 0) > 0 ? (['N'] as const) : []),
    ...((out?.count.ground ?? 0) > 0 ? (['G'] as const) : []),
  ]
  const drawn: Primitive[] = [
    { kind: 'rectangle', x, y: top - 12, width, height: bottom - top + 16, pen: 'medium' },
    label(x, top - 14, inCapitals(input.project.electrical?.combiner?.name ?? 'AC combiner'), {
      sizePt: SIZE,
      face: 'bold',
      valign: 'bottom',
    }),
    ...drawBuses(buses, top, bottom),
    ...rows.flatMap((row) => [
      ...toBuses(slots, buses, row.wires, x, row.y),
      ...poles(slots, row.wires, x + 17, row.y, breakerSymbol),
      label(x + 27, row.y - slots.halfPt - 11, row.circuit.breaker_a === null ? '' : `${row.circuit.breaker_a} A`, {
        sizePt: SIZE,
        align: 'right',
      }),
    ]),
    ...wires.flatMap((wire) => [
      run(wire, buses.x(wire), y + slots.dy(wire), x + width, y + slots.dy(wire)),
      // A row at the same height has its dot there.
      ...(rows.some((row) => row.y === y && row.wires.includes(wire)) ? [] : [dot(buses.x(wire), y + slots.dy(wire))]),
    ]),
    label(x, bottom + 6, 'Neutral and ground bars are apart here.', {
      sizePt: SIZE,
      maxWidthPt: box.width * (across.disconnect - across.combiner) - 30,
    }),
  ]
  return { drawn, leaving: { circuit, wires, x: x + width, y } }
}

/** From the collector through the disconnect to a flag for each output. */
function drawOutputs(job: PvJob, outputs: readonly Leaving[]): Primitive[] {
  const { box, across, wiring, input } = job
  const { electrical } = input.project
  const [x, flagX] = [box.x + box.width * across.disconnect, box.x + box.width * across.flag]
  const supply = electrical?.connection?.kind === 'supply_side'
  const stated = Object.entries(electrical?.disconnects ?? {}).find(([, { kind }]) => kind === 'pv_system')
  const isThere = supply || stated !== undefined
  const tap = wiring.circuits.find(({ kind }) => kind === 'ac_supply_tap')
  const letters = new Map(landingsOf(wiring).map(({ circuit, letter }) => [circuit, letter]))
  const to = inCapitals(landingTitle(input.project, wiring))
  const through: Through[] = []
  const drawn = outputs.flatMap((output, index) => {
    const own = output.circuit.kind === 'ac_combined_output' ? conductorsOf(job, [output.circuit.id]) : []
    const half = tap === undefined ? Math.ceil(own.length / 2) : own.length
    const before = own.slice(0, half)
    const after = tap === undefined ? own.slice(half) : index === 0 ? conductorsOf(job, [tap.id]) : []
    const inside = isThere ? [x - 24, x + 24] : [x, x]
    const left = pieceOf(job, before, output.wires, output, [output.x, inside[0] ?? x])
    const right = pieceOf(job, after, left.wires, output, [inside[1] ?? x, flagX], tap)
    through.push({ wires: left.wires, beyond: right.wires, y: output.y, x })
    return [
      ...left.drawn,
      ...right.drawn,
      line(flagX, output.y - 22, flagX, output.y + 22, { pen: 'medium' }),
      ...joinFlag(flagX + 3, output.y, letters.get(output.circuit.id) ?? ''),
      label(flagX + 31, output.y, `TO ${to}`, {
        sizePt: SIZE,
        face: 'bold',
        valign: 'middle',
        maxWidthPt: box.x + box.width - flagX - 32,
      }),
    ]
  })
  const devices = [...new Set(outputs.flatMap(({ circuit }) => circuit.breaker_a ?? []))]
  return [...drawn, ...(isThere ? drawDisconnect(job, through, stated, supply ? devices : []) : [])]
}

/** Conductors in series, or the same wires going on where their conductor is tagged elsewhere. */
function pieceOf(
  job: PvJob,
  conductors: ReturnType<typeof conductorsOf>,
  wires: readonly Wire[],
  { circuit, y }: Leaving,
  span: readonly [number, number],
  tap?: Leaving['circuit'],
): { drawn: readonly Primitive[]; wires: readonly Wire[] } {
  if (conductors.length === 0) return { drawn: bundle(job.slots, wires, span[0], span[1], y), wires }
  const { drawn, last } = inSeries(job, conductors, tap ?? circuit, span, y)
  return { drawn, wires: last }
}

/** The conductor that bonds rails and frames, under the rows. */
function arrayGround({ box, across, wiring }: PvJob, y: number): Primitive[] {
  const { array } = bondingOf(wiring)
  const { size_awg: size, material } = wiring.grounding.array
  const x = box.x + box.width * across.symbol
  return [
    line(x, y, x + 60, y, { pen: 'thin', dash: 'dashed' }),
    ...(array === undefined ? [] : tagSymbol(x + 7, y, array.tag)),
    label(
      x + 64,
      y - SIZE * 0.6,
      `rails and frames bonded with ${plainAwg(size)} ${material}, to the equipment ground of the circuits`,
      {
        sizePt: SIZE,
        maxWidthPt: box.width * (across.combiner - across.symbol) - 70,
      },
    ),
  ]
}

const plainAwg = (size: string): string => (size.includes('kcmil') ? size : `${plainNumber(Number(size), 0)} AWG`)
