import { findSite } from '../../../climate/index.js'
import { madeUp, MADE_UP_PLANE, stated, type StartingHouse } from '../../../project/index.js'
import { siteAt, siteFromTable } from '../new-project-site.js'

/** What has been answered so far; undefined where a question was left to its default. */
export type Answers = Readonly<Record<string, string | undefined>>

/** A question of `new-project --ask`. Its key is that of a file of answers. */
export interface Question {
  readonly key: string
  readonly text: string
  /** Where one finds it, for `?`. */
  readonly help: string
  /** What stands for no answer, as it is said; undefined where there has to be one. */
  readonly fallback?: ((answers: Answers) => string) | undefined
  /** Why an answer cannot be taken, undefined when it can. */
  readonly refuse: (text: string, answers: Answers) => string | undefined
}

const LATER = (): string => 'later'

function number(min: number, max: number, unit: string, whole = false): Question['refuse'] {
  return (text) => {
    const value = numberOf(text)
    const kind = whole ? 'a whole number' : 'a number'
    if (Number.isNaN(value) || (whole && !Number.isInteger(value)))
      return `'${text}' is not ${kind}; allowed: ${min} to ${max} ${unit}`.trimEnd()
    return value < min || value > max
      ? `${value} is out of range; allowed: ${min} to ${max} ${unit}`.trimEnd()
      : undefined
  }
}

/** Also with a comma between thousands; NaN for anything else. */
function numberOf(text: string): number {
  const plain = text.trim().replaceAll(/(?<=\d),(?=\d{3}(?:\D|$))/gu, '')
  return /^[-+]?(?:\d+\.?\d*|\.\d+)$/u.test(plain) ? Number(plain) : Number.NaN
}

const isLater = (answers: Answers, key: string): boolean => answers[key] === undefined
const PLACE = /^\s*(-?\d+(?:\.\d+)?)\s*[, ]\s*(-?\d+(?:\.\d+)?)\s*$/u

function refusePlace(text: string): string | undefined {
  const point = PLACE.exec(text)
  if (point !== null) {
    const [lat, lon] = [Number(point[1]), Number(point[2])]
    if (Math.abs(lat) > 90) return `latitude ${lat} is out of range; allowed: -90 to 90 deg`
    return Math.abs(lon) > 180 ? `longitude ${lon} is out of range; allowed: -180 to 180 deg, west negative` : undefined
  }
  const { site, candidates } = findSite(text)
  if (site !== undefined) return undefined
  const near = candidates.slice(0, 4).map((each) => `${each.name}, ${each.state}`)
  return `no one weather site is '${text}'${near.length === 0 ? '' : `; near: ${near.join('; ')}`}; or give latitude, longitude`
}

function refuseRidge(text: string, { eave_ft: eave }: Answers): string | undefined {
  const most = eave === undefined ? MADE_UP_PLANE.widthFt.value : numberOf(eave)
  return number(0, most, 'ft')(text, {})
}

/** In the order in which they are asked. */
export const QUESTIONS: readonly Question[] = [
  {
    key: 'place',
    text: 'Where is the house? City, ST or latitude, longitude',
    help: "The nearest weather site, such as 'Denver, CO', or the place itself, such as 39.74, -104.99 (west is negative). A map on the web shows it; 'gablewatt list-sites' finds sites.",
    refuse: refusePlace,
  },
  {
    key: 'address',
    text: 'Address, as it is to stand on the drawings',
    help: 'Street and town on one line. Only the permit drawings need it.',
    fallback: LATER,
    refuse: (text) => (/\p{Cc}/u.test(text) ? 'an address is one line of text' : undefined),
  },
  {
    key: 'azimuth_deg',
    text: 'Which way does the roof plane for the modules face, downhill? degrees from true north',
    help: '90 is east, 180 south, 270 west. Measure on a map with north up: the direction in which rain runs off.',
    fallback: () => '180, made up',
    refuse: number(0, 360, 'deg'),
  },
  {
    key: 'pitch_in_12',
    text: 'How steep is it? inches of rise in 12 of run',
    help: 'Hold a level 12 in long against the slope, level it, and measure the gap at its end.',
    fallback: () => '6, made up',
    refuse: number(0, 24, 'in per 12 in'),
  },
  {
    key: 'eave_ft',
    text: 'How long is its eave? ft',
    help: 'Along the gutter, from corner to corner.',
    fallback: () => '40, made up',
    refuse: number(4, 300, 'ft'),
  },
  {
    key: 'ridge_ft',
    text: 'How long is its ridge? ft; shorter than the eave on a hip roof',
    help: 'The same as the eave where the roof ends in gables, less on a hip roof, 0 where the plane ends in a point.',
    fallback: ({ eave_ft: eave }) => `${eave ?? '40'}, as the eave`,
    refuse: refuseRidge,
  },
  {
    key: 'slope_ft',
    text: 'How far is it from eave to ridge, along the surface? ft',
    help: 'Count the courses of shingles and multiply by what one shows (about 5.6 in), or measure along the edge of a gable.',
    fallback: () => '16, made up',
    refuse: number(3, 100, 'ft'),
  },
  {
    key: 'eave_height_ft',
    text: 'How high is the eave above the ground? ft',
    help: 'About 9 to 10 on one storey, 18 to 20 on two. Wind and ladders depend on it.',
    fallback: () => '10, made up',
    refuse: number(4, 60, 'ft'),
  },
  {
    key: 'equipment',
    text: 'A file with the data sheets of module and inverter (YAML)',
    help: "The file has the groups modules and inverters, as the part equipment of a project file; 'gablewatt explain project-file' tells more. Without one, an invented 410 W module with an inverter behind each stands in.",
    fallback: () => 'invented equipment',
    refuse: () => undefined,
  },
  {
    key: 'modules',
    text: 'How many modules?',
    help: 'Or nothing: then as many are placed as the roof holds between its setbacks.',
    fallback: () => 'as many as fit',
    refuse: number(1, 200, 'modules', true),
  },
  {
    key: 'year_kwh',
    text: 'How much electricity does the house use in a year? kWh',
    help: 'The sum of the last twelve bills. Without it the file has no bill yet.',
    fallback: LATER,
    refuse: number(100, 200_000, 'kWh'),
  },
  {
    key: 'usd_per_kwh',
    text: 'What does a kWh cost, all charges per kWh together? USD',
    help: "The sum of the lines of your bill that are counted by kWh, divided by the kWh. A rate by the hour or by season is written into the file afterwards: 'tariff'.",
    fallback: (answers) => (isLater(answers, 'year_kwh') ? 'later' : '0.15, made up'),
    refuse: number(0.01, 2, 'USD per kWh'),
  },
  {
    key: 'fixed_usd_per_month',
    text: 'And the fixed charge of a month? USD',
    help: 'The line of the bill that does not depend on use: customer or service charge.',
    fallback: (answers) => (isLater(answers, 'year_kwh') ? 'later' : '12, made up'),
    refuse: number(0, 200, 'USD'),
  },
  {
    key: 'bus_a',
    text: 'Rating of the busbar of the main panel? A',
    help: 'On the label inside the door of the panel. It decides how large a breaker the system may have, so that it is never guessed.',
    fallback: LATER,
    refuse: number(60, 1200, 'A', true),
  },
  {
    key: 'main_a',
    text: 'And its main breaker? A',
    help: 'On the handle of the main breaker.',
    fallback: LATER,
    refuse: number(30, 1200, 'A', true),
  },
]

/** The house that the answers tell of. */
export function houseFrom(
  answers: Answers,
  known: Partial<StartingHouse>,
  equipment: StartingHouse['equipment'],
): Partial<StartingHouse> {
  const numeric = (key: string, fallback: number) => {
    const text = answers[key]
    return text === undefined ? madeUp(fallback) : stated(numberOf(text))
  }
  const { place, address, modules } = answers
  const site = known.site ?? (place === undefined ? undefined : siteOf(place))
  const widthFt = numeric('eave_ft', 40)
  const { id: _, ...plane } = MADE_UP_PLANE
  const azimuthDeg = numeric('azimuth_deg', 180)
  return {
    ...known,
    ...(site === undefined ? {} : { site: address === undefined ? site : { ...site, address: stated(address) } }),
    ...(known.title === undefined && address !== undefined
      ? { title: stated(`Photovoltaic system at ${address}`) }
      : {}),
    planes: [
      {
        ...plane,
        id: sideOf(azimuthDeg.value),
        azimuthDeg,
        tilt: numeric('pitch_in_12', 6),
        widthFt,
        ridgeFt: answers['ridge_ft'] === undefined ? widthFt : stated(numberOf(answers['ridge_ft'])),
        depthFt: numeric('slope_ft', 16),
        eaveHeightFt: numeric('eave_height_ft', 10),
      },
    ],
    modules: modules === undefined ? undefined : stated(numberOf(modules)),
    ...(equipment === undefined ? {} : { equipment }),
    ...(answers['year_kwh'] === undefined
      ? {}
      : {
          bill: {
            yearKwh: numeric('year_kwh', 0),
            usdPerKwh: numeric('usd_per_kwh', 0.15),
            fixedUsd: numeric('fixed_usd_per_month', 12),
          },
        }),
    ...(answers['bus_a'] === undefined && answers['main_a'] === undefined
      ? {}
      : { panel: { busA: numeric('bus_a', 200), mainA: numeric('main_a', 200) } }),
  }
}

function siteOf(text: string): NonNullable<StartingHouse['site']> {
  const point = PLACE.exec(text)
  return point === null ? siteFromTable(text, () => undefined) : siteAt(Number(point[1]), Number(point[2]))
}

function sideOf(azimuthDeg: number): string {
  return ['north', 'east', 'south', 'west'][Math.round(azimuthDeg / 90) % 4] ?? 'south'
}
