import type { ArrayLight, ShadeGroup } from './array-light.js'
import type { ArrayPlan } from './array-plan.js'
import { cellRiseKPerWM2, type CellTemperatureModel } from './cell-temperature.js'
import { emptyLadder, type Ladder } from './ladder.js'
import { modulePowerW, type ModuleModel } from './module-model.js'
import { seriesFactors, type SeriesWatch } from './series-factors.js'
import { shareOfString, type SeriesCurve } from './series/index.js'
import type { LossSettings, ModelSettings } from './settings.js'
import type { SkySteps } from './sky-steps.js'
import type { Celsius, KilowattHours, Watts } from '../values/index.js'

/** Modules of an array that see the same light. */
export interface ModuleGroup {
  /** Indices into `plan.modules`. */
  readonly members: readonly number[]
  /** DC power of one of them at the inverter's input, W, by step. */
  readonly dcW: Float64Array
  /** Light that reaches it (before the glass), kWh/m2 a year. */
  readonly receivedKwhM2: number
  /** Share of what its light is worth that shadows on some of its sections, or on its string, take beside the light. */
  readonly mismatchLost: number
}

/** DC side of an array, all modules. */
export interface ArrayDc {
  readonly plan: ArrayPlan
  readonly groups: readonly ModuleGroup[]
  /** Light on the unshaded plane, W/m2, by step. */
  readonly planeWM2: Float64Array
  /** Steps of the ladder up to `dc_cables`, kWh a year, all modules together. */
  readonly ladder: Ladder
  /** Energy after cell temperature by the other temperature model, kWh a year. */
  readonly comparedKwh: KilowattHours
}

/** How one array is computed. */
export interface ArrayModels {
  readonly settings: ModelSettings
  readonly losses: LossSettings
  readonly module: ModuleModel
  readonly temperature: CellTemperatureModel
  /** Cell above air by another temperature model, K per W/m2, for how much the choice matters. */
  readonly comparedRiseKPerWM2: number
  /** Share of light that snow takes, by step; undefined without snow. */
  readonly snow: Float64Array | undefined
  /** What a module gives with some of its sections, or a string with some of its modules, in the shade; undefined without shade. */
  readonly curve: SeriesCurve | undefined
}

/** DC power of every module of an array through the year. */
export function arrayDc(steps: SkySteps, lit: ArrayLight, models: ArrayModels): ArrayDc {
  const { losses } = models
  const rise = new Float64Array(steps.length)
  for (let step = 0; step < rise.length; step += 1) {
    rise[step] = cellRiseKPerWM2(models.temperature, steps.windMs[step]!)
  }
  const ladder = emptyLadder()
  let comparedKwh = 0
  const strings = seriesFactors(
    steps,
    lit,
    (group, watch) => {
      groupDc(steps, lit, group, rise, models, watch)
    },
    models.curve,
  )
  const groups = lit.groups.map((group): ModuleGroup => {
    const watch = strings.get(group)
    const { dcW, sums } = groupDc(steps, lit, group, rise, models, watch === undefined ? undefined : { factor: watch })
    const count = group.members.length
    for (const name of SUMMED) ladder[name] += sums[name] * count
    comparedKwh += sums.compared * count
    return {
      members: group.members,
      dcW,
      receivedKwhM2: sums.shade / (models.module.pmaxW / 1000),
      mismatchLost: sums.snow > 0 ? 1 - sums.bypass / sums.snow : 0,
    }
  })
  let left = ladder.temperature
  for (const [name, loss] of fixedLosses(losses)) {
    left *= 1 - loss
    ladder[name] = left
  }
  return { plan: lit.plan, groups, planeWM2: lit.planeWM2, ladder, comparedKwh }
}

/** Losses that are the same at all times, in the order of the ladder. */
function fixedLosses(losses: LossSettings): readonly (readonly [keyof Ladder, number])[] {
  return [
    ['rating_shortfall', losses.nameplate],
    ['first_weeks_of_light', losses.lightInduced],
    ['years_in_use', losses.age],
    ['unequal_modules', losses.mismatch],
    ['contacts', losses.connections],
  ]
}

const SUMMED = [
  'horizontal',
  'plane',
  'shade',
  'reflection',
  'dirt',
  'snow',
  'bypass',
  'low_light',
  'temperature',
  'dc_cables',
] as const

type Sums = Record<(typeof SUMMED)[number] | 'compared', number>

/** One module of a group through the year: the hot loop. */
function groupDc(
  steps: SkySteps,
  { light, planeWM2 }: ArrayLight,
  group: ShadeGroup,
  rise: Float64Array,
  models: ArrayModels,
  watch: SeriesWatch | undefined,
): { readonly dcW: Float64Array; readonly sums: Sums } {
  const { shade } = group
  const { settings, losses, module, snow, comparedRiseKPerWM2 } = models
  const { length, month: months, hours, sunIndex, dryBulbC, ghiWM2 } = steps
  const { direct, sky, ground, directIn, skyModifier, groundModifier } = light
  const dcW = new Float64Array(length)
  const clean = Float64Array.from(losses.soiling, (loss) => 1 - loss)
  const kept = fixedLosses(losses).reduce((product, [, loss]) => product * (1 - loss), 1)
  const resistive = settings.wiringLoss === 'resistive'
  const { pmaxW, powerCoefficientPerK: perK, lowLightSlope: slope } = module
  let [horizontal, plane, arriving, through, cleaned, snowFree, wired] = [0, 0, 0, 0, 0, 0, 0]
  let [bypass, dimmed, heated, compared] = [0, 0, 0, 0]
  for (let step = 0; step < length; step += 1) {
    const month = months[step]!
    const hour = hours[step]!
    const sun = sunIndex[step]!
    const far = shade === undefined ? 1 : shade.through[sun]!
    const nearLit = shade === undefined ? 1 : shade.lit[sun]!
    const skySeen = shade === undefined ? 1 : shade.sky[month]!
    const fromSky = sky[step]! * skySeen
    const fromGround = shade === undefined ? ground[step]! : ground[step]! * shade.ground[month]!
    const arrives = direct[step]! * far * nearLit + fromSky + fromGround
    const diffuseIn = fromSky * skyModifier + fromGround * groundModifier
    const sunIn = directIn[step]! * far
    const inGlass = sunIn * nearLit + diffuseIn
    const clear = clean[month]!
    const free = snow === undefined ? clear : clear * (1 - snow[step]!)
    const works = inGlass * free
    const cellC = dryBulbC[step]! + arrives * rise[step]!
    // modulePowerW, written out: this loop runs a hundred thousand times.
    const heat = 1 + perK * (cellC - 25)
    const dim = slope === 0 || works <= 0 ? 1 : Math.max(0, 1 + slope * Math.log(works / 1000))
    let power = works > 0 && heat > 0 ? (pmaxW * works * dim * heat) / 1000 : 0
    let isUneven = false
    if (nearLit < 1 && power > 0) {
      const best = unevenW(models, group, {
        sun,
        sunnyWM2: (sunIn + diffuseIn) * free,
        dullWM2: diffuseIn * free,
        cellC,
      })
      if (best < power) {
        power = best
        isUneven = true
      }
    }
    if (watch?.aloneW !== undefined) {
      watch.aloneW[step] = power
      watch.fullW[step] = modulePowerW(module, (sunIn + diffuseIn) * free, cellC)
      watch.dullW[step] = modulePowerW(module, diffuseIn * free, cellC)
    }
    const factor = watch?.factor === undefined ? 1 : watch.factor[step]!
    if (factor < 1) {
      power *= factor
      isUneven = true
    }
    const beforeWiring = power * kept
    const out = beforeWiring * (1 - (resistive ? (losses.dcWiring * beforeWiring) / pmaxW : losses.dcWiring))
    dcW[step] = out
    horizontal += ghiWM2[step]! * hour
    plane += planeWM2[step]! * hour
    arriving += arrives * hour
    through += inGlass * hour
    cleaned += inGlass * clear * hour
    snowFree += works * hour
    wired += out * hour
    if (power > 0) {
      const ideal = isUneven ? (power / (heat * dim)) * hour : pmaxW * (works / 1000) * hour
      bypass += ideal
      dimmed += ideal * dim
      heated += power * hour
      compared += ideal * dim * (1 + perK * (dryBulbC[step]! + arrives * comparedRiseKPerWM2 - 25))
    }
  }
  const lightSums = lightAsKwh({ horizontal, plane, arriving, through, cleaned, snowFree }, pmaxW)
  return { dcW, sums: { ...lightSums, ...powerAsKwh({ bypass, dimmed, heated, wired, compared }) } }
}

/** A moment of a module with a shadow on it. */
interface UnevenMoment {
  readonly sun: number
  /** Light that works in a lit section, and diffuse light alone, W/m2. */
  readonly sunnyWM2: number
  readonly dullWM2: number
  readonly cellC: Celsius
}

/** Mean power over a step of a module on which shadows of solids fall, W. */
function unevenW({ module, curve }: ArrayModels, { shade }: ShadeGroup, moment: UnevenMoment): Watts {
  if (shade === undefined || curve === undefined) return Infinity
  const { sun, sunnyWM2, dullWM2, cellC } = moment
  const { time, sections } = shade
  const fullW = modulePowerW(module, sunnyWM2, cellC)
  const dullShare = fullW > 0 ? modulePowerW(module, dullWM2, cellC) / fullW : 1
  const from = sun * (sections + 1)
  let share = time[from + sections]!
  for (let free = 0; free < sections; free += 1) {
    const weight = time[from + free]!
    if (weight > 0) share += weight * shareOfString(curve, free / sections, dullShare)
  }
  return fullW * share
}

/**
 * Light counts as the energy of loss-free modules under it; W over 1000 is kW, and so is rated power per kW/m2.
 *
 * @param light Sums of light after each loss, Wh/m2.
 */
function lightAsKwh(
  light: Record<'horizontal' | 'plane' | 'arriving' | 'through' | 'cleaned' | 'snowFree', number>,
  pmaxW: Watts,
): Pick<Sums, 'horizontal' | 'plane' | 'shade' | 'reflection' | 'dirt' | 'snow'> {
  const asKwh = pmaxW / 1e6
  return {
    horizontal: light.horizontal * asKwh,
    plane: light.plane * asKwh,
    shade: light.arriving * asKwh,
    reflection: light.through * asKwh,
    dirt: light.cleaned * asKwh,
    snow: light.snowFree * asKwh,
  }
}

/** @param power Sums of power after each loss, Wh. */
function powerAsKwh(
  power: Record<'bypass' | 'dimmed' | 'heated' | 'wired' | 'compared', number>,
): Pick<Sums, 'bypass' | 'low_light' | 'temperature' | 'dc_cables' | 'compared'> {
  return {
    bypass: power.bypass / 1000,
    low_light: power.dimmed / 1000,
    temperature: power.heated / 1000,
    dc_cables: power.wired / 1000,
    compared: power.compared / 1000,
  }
}
