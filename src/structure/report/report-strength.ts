import { LAG_SCREWS, LOAD_DURATION } from '../../tables/nds/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import {
  lateralReferenceLb,
  penetrationShare,
  penetrationIn,
  threadInRafterIn,
  withdrawalPerInchLb,
  centringToleranceIn,
  leadHoleIn,
} from '../fasteners/index.js'
import { lagCapacity, lagsOf, type LagScrews } from '../mounts/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import type { Inches, Pounds } from '../../values/index.js'

/** Writes the strength of the lag screws of a mount in one plane's rafters on the worksheet, where it has any. */
export function reportStrength(solved: SolvedPlane, kit: RailKit, edition: string, worksheet: Worksheet): void {
  const plane = solved.model.geometry.id
  const mount = lagsOf(solved.mount)
  if (mount === undefined) return
  const lags: LagsInPlane = {
    id: `structure.${plane}.lag`,
    plane,
    mount,
    mountId: kit.mount.id,
    nds: (place, standing = 'secondary') => ({ document: edition, place, standing }),
  }
  const capacity = lagCapacity(mount, LOAD_DURATION.wind)
  const thread = recordThread(lags, worksheet)
  recordWithdrawal(lags, thread, capacity.withdrawalLb, worksheet)
  recordRootTension(lags, capacity.rootTensionLb, worksheet)
  const sheet = kit.mount.product.sheet ?? `sheet of mount ${kit.mount.id}`
  recordLateral(lags, sheet, capacity.lateralLb, worksheet)
  noteLeadHole(lags, solved.framing.breadthIn, worksheet)
}

/** The screws of one plane and where the numbers about them come from. */
interface LagsInPlane {
  /** Beginning of the ids of the steps. */
  readonly id: string
  readonly plane: string
  readonly mount: LagScrews
  readonly mountId: string
  /** A place in the wood standard. */
  readonly nds: (place: string, standing?: Source['standing']) => Source
}

/** Thread in the rafter, in. */
function recordThread({ id, plane, mount, mountId, nds }: LagsInPlane, worksheet: Worksheet): Inches {
  const { lag } = mount
  return worksheet.step({
    id: `${id}.thread`,
    says: 'Thread in the rafter without the tip',
    formula: 'pt = smaller of T - E, L - layers - E and the rafter depth',
    inputs: [
      { symbol: 'L', value: lag.lengthIn, unit: 'in', from: `equipment.mounts.${mountId}.lag.length_in` },
      { symbol: 'T', value: lag.threadLengthIn ?? Math.min(6, lag.lengthIn / 2 + 0.5), unit: 'in', from: 'table L2' },
      { symbol: 'E', value: LAG_SCREWS[lag.size].tipIn, unit: 'in', from: 'table L2' },
      { symbol: 'layers', value: lag.aboveRafterIn, unit: 'in', from: `structure.framing.${plane}` },
    ],
    result: { symbol: 'pt', value: threadInRafterIn(lag), unit: 'in' },
    source: nds('12.2.1.1 and table L2'),
  })
}

function recordWithdrawal(
  { id, plane, mount, mountId, nds }: LagsInPlane,
  thread: Inches,
  withdrawalLb: Pounds,
  worksheet: Worksheet,
): void {
  const { lag, specificGravity } = mount
  worksheet.step({
    id: `${id}.withdrawal`,
    says: 'Withdrawal capacity of all screws of a mount under wind',
    formula: "W' = n 1800 G^1.5 D^0.75 pt CD CM Ct",
    inputs: [
      { symbol: 'n', value: mount.lagCount, unit: '', from: `equipment.mounts.${mountId}.lag.count` },
      { symbol: 'G', value: specificGravity, unit: '', from: `structure.framing.${plane}` },
      {
        symbol: 'W',
        value: withdrawalPerInchLb(specificGravity, LAG_SCREWS[lag.size].diameterIn),
        unit: 'lb/in',
        from: 'eq. 12.2-1',
      },
      { symbol: 'pt', value: thread, unit: 'in', from: `${id}.thread` },
      { symbol: 'CD', value: LOAD_DURATION.wind, unit: '', from: 'table 2.3.2' },
      { symbol: 'CM', value: mount.wetFactor, unit: '', from: `structure.framing.${plane}.wet_service` },
      {
        symbol: 'Ct',
        value: mount.temperatureFactor,
        unit: '',
        from: `structure.framing.${plane}.sustained_temperature`,
      },
    ],
    result: { symbol: "W'", value: withdrawalLb, unit: 'lb' },
    source: nds('eq. 12.2-1, tables 2.3.2, 11.3.3, 11.3.4'),
  })
}

function recordRootTension({ id, mount }: LagsInPlane, rootTensionLb: Pounds, worksheet: Worksheet): void {
  const { lag } = mount
  worksheet.step({
    id: `${id}.root-tension`,
    says: 'Tension capacity of the screw roots of a mount',
    formula: 'Nr = n (60000 / 2.00) pi Dr^2 / 4',
    inputs: [{ symbol: 'Dr', value: LAG_SCREWS[lag.size].rootDiameterIn, unit: 'in', from: 'table L2' }],
    result: { symbol: 'Nr', value: rootTensionLb, unit: 'lb' },
    source: { document: 'ASTM A307 grade A with the safety factor of AISC 360', standing: 'from memory' },
  })
}

function recordLateral(
  { id, mount, mountId, nds }: LagsInPlane,
  sheet: string,
  lateralLb: Pounds,
  worksheet: Worksheet,
): void {
  const { lag, specificGravity } = mount
  const share = penetrationShare(penetrationIn(lag), lag.size)
  worksheet.step({
    id: `${id}.lateral`,
    says: 'Capacity along the slope of all screws of a mount under wind',
    formula: mount.plate === undefined ? "Z' = value of the mount sheet" : "Z' = n Z (p / 8D, at most 1) CD CM Ct",
    inputs:
      mount.plate === undefined
        ? [
            {
              symbol: 'sheet',
              value: mount.lateralLb ?? 0,
              unit: 'lb',
              from: `equipment.mounts.${mountId}.capacity_lateral_lb`,
            },
          ]
        : [
            {
              symbol: 'Z',
              value: lateralReferenceLb(specificGravity, lag.size, mount.plate, 'parallel'),
              unit: 'lb',
              from: 'table 12.3.1A',
            },
            { symbol: 'p / 8D', value: share, unit: '', from: 'table 12K footnote' },
          ],
    result: { symbol: "Z'", value: lateralLb, unit: 'lb' },
    source: mount.plate === undefined ? { document: sheet, standing: 'project file' } : nds('tables 12.3.1A and 12K'),
    limits: 'the base lies on the roof; an open gap under it would bend the screw',
  })
}

function noteLeadHole({ id, plane, mount, mountId, nds }: LagsInPlane, breadthIn: Inches, worksheet: Worksheet): void {
  const { lag, specificGravity } = mount
  const hole = leadHoleIn(specificGravity, lag.size)
  worksheet.note({
    id: `${id}.lead-hole`,
    says: 'Lead hole for the thread, and how far from the middle of the rafter the screw may be',
    formula: 'd = 40 to 70 % of D up to G 0.5, 60 to 75 % up to 0.6, 65 to 85 % above; e = b / 2 - 1.5 D',
    inputs: [
      { symbol: 'D', value: LAG_SCREWS[lag.size].diameterIn, unit: 'in', from: `equipment.mounts.${mountId}.lag.size` },
      { symbol: 'b', value: breadthIn, unit: 'in', from: `structure.framing.${plane}.nominal_size` },
    ],
    result: {
      symbol: 'd; e',
      value: `${hole.leastIn.toFixed(3)} to ${hole.mostIn.toFixed(3)}; ${centringToleranceIn(breadthIn, lag.size).toFixed(2)}`,
      unit: 'in',
    },
    source: nds('12.1.4 and table 12.5.1C', 'from memory'),
  })
}
