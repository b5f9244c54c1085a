import { editDistance } from '../values/index.js'
import { radiationFlags } from './site-flags.js'
import { climateSites, type ClimateSite } from './site-table.js'

/** Upper-case words of letters and digits. */
export function words(text: string): string[] {
  return text
    .toUpperCase()
    .split(/[^A-Z0-9]+/)
    .filter((word) => word !== '')
}

/** The site that was meant, or what may have been meant. */
export interface FoundSite {
  readonly site: ClimateSite | undefined
  /** Other sites, best first, at most five: of the same city when `site` is known, with a name alike otherwise. */
  readonly candidates: readonly ClimateSite[]
}

const MOST_CANDIDATES = 5

/**
 * Finds a built-in site by `City, ST` or by its station number.
 *
 * @param text Such as `Seattle, WA`; the state may be missing, and the city may be the beginning of the site's name.
 * @returns The site that fits; of several in one city the one without doubts about its sun, an international airport
 *   before others; or the candidates when none fits, or several of different states.
 */
export function findSite(text: string): FoundSite {
  const sites = climateSites()
  const byNumber = sites.find((site) => site.wmo === text.trim())
  if (byNumber !== undefined) return { site: byNumber, candidates: [] }
  const { city, state } = splitPlace(text)
  if (city.length === 0) return { site: undefined, candidates: [] }
  const inState = state === undefined ? sites : sites.filter((site) => site.state === state)
  const beginning = inState.filter((site) => startsWithWords(words(site.name), city))
  const anywhere = beginning.length > 0 ? beginning : inState.filter((site) => containsWords(words(site.name), city))
  const exact = anywhere.filter((site) => words(site.name).join(' ') === city.join(' '))
  const fitting = exact.length > 0 ? exact : anywhere
  if (fitting.length > 0) {
    const ranked = fitting.toSorted((a, b) => doubt(a) - doubt(b))
    const oneState = new Set(fitting.map((site) => site.state)).size === 1
    return oneState
      ? { site: ranked[0], candidates: ranked.slice(1, MOST_CANDIDATES + 1) }
      : { site: undefined, candidates: ranked.slice(0, MOST_CANDIDATES) }
  }
  return { site: undefined, candidates: alike(inState.length > 0 ? inState : sites, city) }
}

/** The less, the better a site stands for its city. */
function doubt(site: ClimateSite): number {
  return (radiationFlags(site).length > 0 ? 2 : 0) + (words(site.name).includes('INTL') ? 0 : 1)
}

function splitPlace(text: string): { city: string[]; state: string | undefined } {
  const comma = text.lastIndexOf(',')
  const state =
    comma === -1
      ? undefined
      : text
          .slice(comma + 1)
          .trim()
          .toUpperCase()
  const city = words(comma === -1 ? text : text.slice(0, comma))
  // The table files the airport of Washington DC under Virginia, where it lies.
  if (state === 'DC') return { city: [...city, 'DC'], state: 'VA' }
  return { city, state: state === '' ? undefined : state }
}

function startsWithWords(name: readonly string[], city: readonly string[]): boolean {
  const last = city.length - 1
  return city.every((word, index) => (index === last ? (name[index] ?? '').startsWith(word) : name[index] === word))
}

function containsWords(name: readonly string[], city: readonly string[]): boolean {
  return name.some((_, index) => startsWithWords(name.slice(index), city))
}

/** Sites whose name begins most like the city, wrong letters counted. */
function alike(sites: readonly ClimateSite[], city: readonly string[]): ClimateSite[] {
  const asked = city.join(' ')
  return sites
    .map((site) => ({ site, edits: editDistance(asked, words(site.name).slice(0, city.length).join(' ')) }))
    .filter((one) => one.edits <= Math.max(2, asked.length / 3))
    .sort((a, b) => a.edits - b.edits)
    .slice(0, MOST_CANDIDATES)
    .map((one) => one.site)
}
