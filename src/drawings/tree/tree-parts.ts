import type { ConductorValues, NodeValues, WiringValues } from '../../electrical/index.js'
import type { Electrical } from '../../project/index.js'
import { own, type Amperes } from '../../values/index.js'

/** An output of the PV system where it lands, with the letter that joins the two parts of the diagram. */
export interface Landing {
  readonly letter: string
  readonly breakerA: Amperes | null
}

/** What hangs on a busbar, a tap or the service conductors without a panel of its own. */
export type Leaf =
  | {
      readonly kind: 'source'
      readonly node: NodeValues
      readonly of: 'pv' | 'storage' | 'generator'
      /** Whether it belongs to this project and is drawn on the row of its own. */
      readonly planned: boolean
    }
  | { readonly kind: 'pv'; readonly landing: Landing; readonly oppositeEnd: boolean }

export interface TapPart {
  readonly node: NodeValues
  readonly conductor: ConductorValues | undefined
  readonly farEnd: boolean
  readonly leaves: readonly Leaf[]
}

export interface FeederPart {
  readonly node: NodeValues
  readonly conductor: ConductorValues | undefined
  readonly breakerA: Amperes | undefined
  readonly throughLugs: boolean
  /** Whether its breaker stands at the end of the busbar opposite the main. */
  readonly oppositeEnd: boolean
  /** Whether its size is stated, as of conductors that lie there. */
  readonly existing: boolean
  readonly taps: readonly TapPart[]
  readonly to: PanelPart
}

export interface PanelPart {
  readonly node: NodeValues
  /** Rating of its own main device, A; undefined for main lugs only. */
  readonly ownMainA: Amperes | undefined
  readonly interruptingA: Amperes | undefined
  /** Of its terminals, lb-in. */
  readonly torqueLbIn: number | undefined
  readonly location: string | undefined
  readonly leaves: readonly Leaf[]
  readonly feeders: readonly FeederPart[]
}

/** The installation as the diagram shows it, from the utility inwards. */
export interface TreeParts {
  readonly service: NodeValues | undefined
  readonly supplySide: readonly Leaf[]
  /** Panels that the service feeds, the first of the list of conductors last. */
  readonly roots: readonly PanelPart[]
}

/** Outputs of the PV system that land in the installation: of the combiner, or of every inverter or branch. */
export function landingsOf(wiring: WiringValues): (Landing & { readonly circuit: string })[] {
  const combined = wiring.circuits.find(({ kind }) => kind === 'ac_combined_output')
  const outputs =
    combined === undefined
      ? wiring.circuits.filter(({ kind }) => kind === 'ac_inverter_output' || kind === 'ac_branch')
      : [combined]
  return outputs.map(({ id, breaker_a: breakerA }, index) => ({ circuit: id, letter: letterOf(index), breakerA }))
}

const letterOf = (index: number): string =>
  index < 26 ? String.fromCodePoint(65 + index) : `${letterOf(Math.floor(index / 26) - 1)}${letterOf(index % 26)}`

/** The tree of an installation in the long form, for the drawing. */
export function treeParts(electrical: Electrical, wiring: WiringValues): TreeParts {
  const find = partsFinder(electrical, wiring)
  const roots = wiring.distribution.filter(({ kind, parent }) => kind === 'panel' && parent === 'service')
  return {
    service: wiring.distribution.find(({ kind }) => kind === 'service'),
    supplySide: find.leaves('service'),
    roots: roots.map((node) => find.panel(node)).toReversed(),
  }
}

function partsFinder(electrical: Electrical, wiring: WiringValues) {
  const { distribution, connection } = electrical
  const landsAt = connection?.kind === 'supply_side' ? 'service' : (connection?.at ?? onlyPanel(electrical))
  const oppositeEnd = connection?.kind === 'load_side_breaker' && connection.breaker_position === 'opposite_end'
  const nodes = (kind: NodeValues['kind'], parent: string): NodeValues[] =>
    wiring.distribution.filter((node) => node.kind === kind && node.parent === parent)
  const conductor = (id: string): ConductorValues | undefined =>
    wiring.conductors.find(({ tag, circuits }) => /^[FT]/u.test(tag) && circuits.includes(id))
  // An id of a source that is there already wins: then the storage of the project has no node of that name.
  const isPlanned = ({ id }: NodeValues): boolean =>
    wiring.storage !== undefined && id === 'storage' && own(distribution?.sources, id) === undefined
  const leaves = (at: string): Leaf[] => [
    ...nodes('source', at).map((node): Leaf => ({
      kind: 'source',
      node,
      of: isPlanned(node) ? 'storage' : (own(distribution?.sources, node.id)?.kind ?? 'pv'),
      planned: isPlanned(node),
    })),
    ...(at === landsAt ? landingsOf(wiring).map((landing): Leaf => ({ kind: 'pv', landing, oppositeEnd })) : []),
  ]
  const tap = (node: NodeValues): TapPart => ({
    node,
    conductor: conductor(node.id),
    farEnd: own(distribution?.taps, node.id)?.position === 'far_end',
    leaves: leaves(node.id),
  })
  const feeder = (node: NodeValues): FeederPart[] => {
    const stated = own(distribution?.feeders, node.id)
    const [to] = nodes('panel', node.id)
    if (to === undefined) return []
    return [
      {
        node,
        conductor: conductor(node.id),
        breakerA: stated?.breaker_a,
        throughLugs: stated?.through_lugs === true,
        oppositeEnd: stated?.breaker_position === 'opposite_end',
        existing: stated?.size_awg !== undefined,
        taps: nodes('tap', node.id).map(tap),
        to: panel(to),
      },
    ]
  }
  const panel = (node: NodeValues): PanelPart => {
    const stated = own(distribution?.panels, node.id)
    return {
      node,
      ownMainA: stated?.main_a,
      interruptingA: stated?.interrupting_rating_a,
      torqueLbIn: stated?.terminal_torque_lb_in,
      location: stated?.location,
      leaves: leaves(node.id),
      feeders: nodes('feeder', node.id).flatMap(feeder),
    }
  }
  return { leaves, panel }
}

function onlyPanel({ distribution }: Electrical): string | undefined {
  const [first, ...more] = Object.keys(distribution?.panels ?? {})
  return more.length === 0 ? first : undefined
}

/** Panels on the longest way from a panel on, itself among them; those beyond a cut do not count. */
export function depthFrom(panel: PanelPart, cuts: ReadonlyMap<string, string>): number {
  return 1 + Math.max(0, ...panel.feeders.map(({ node, to }) => (cuts.has(node.id) ? 1 : depthFrom(to, cuts))))
}
