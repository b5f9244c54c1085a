import { siteClimate, weatherFileOf } from '../climate/index.js'
import type { Project } from '../project/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import { digest } from './digest.js'
import { runYield, type YieldContext, type YieldRun, type YieldValues } from '../yield/index.js'

/** A year of hours takes some 700 kB; neighbours follow each other in a table, so that few are enough. */
const MOST_SITES = 12

interface Known {
  readonly context: YieldContext
  /** Proof of the climate, made when a second house needs it. */
  proof: Result<unknown> | undefined
}

/**
 * An energy estimate that works out the climate and the sky of a site once for all houses that share it. Its results
 * are those of `estimateYield` to the last digit and word.
 */
export function sharedClimateYield(): (project: Project, files: ReadonlyMap<string, string>) => Result<YieldValues> {
  const run = sharedClimateRun()
  return (project, files) => run(project, files).result
}

/** `sharedClimateYield` with everything behind the estimate. */
export function sharedClimateRun(): (project: Project, files: ReadonlyMap<string, string>) => YieldRun {
  const known = new Map<string, Known>()
  return (project, files) => {
    const key = keyOf(project, files)
    const found = known.get(key)
    if (found === undefined) {
      const first = runYield(project, files)
      const { climate, steps } = first
      known.set(key, { context: { climate, steps }, proof: undefined })
      const oldest = known.keys().next()
      if (known.size > MOST_SITES && oldest.done !== true) known.delete(oldest.value)
      return first
    }
    found.proof ??= climateProof(project, files)
    const worksheet = new Worksheet()
    worksheet.include(found.proof)
    const run = runYield(project, files, found.context)
    worksheet.include(run.result)
    return { ...run, result: worksheet.result(run.result.values) }
  }
}

/** All that decides climate and sky. */
function keyOf({ site, model }: Project, files: ReadonlyMap<string, string>): string {
  const { latitude_deg, longitude_deg, elevation_ft, utc_offset_h, climate } = site
  const weather = weatherText(site, files)
  const place = [latitude_deg, longitude_deg, elevation_ft, utc_offset_h, climate, model]
  return JSON.stringify([...place, weather === undefined ? null : digest([weather])])
}

function climateProof({ site }: Project, files: ReadonlyMap<string, string>): Result<unknown> {
  const worksheet = new Worksheet()
  siteClimate(site, weatherText(site, files), worksheet)
  return worksheet.result({})
}

function weatherText(site: Project['site'], files: ReadonlyMap<string, string>): string | undefined {
  const name = weatherFileOf(site)
  return name === undefined ? undefined : files.get(name)
}
