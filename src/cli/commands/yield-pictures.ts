import type { House } from '../../house/index.js'
import type { Project } from '../../project/index.js'
import type { YieldValues } from '../../yield/index.js'
import { UsageError } from '../errors.js'
import type { OutputFile } from '../subcommand.js'

/** Options of the pictures of an energy estimate. */
export interface PictureOptions {
  readonly shadeChart?: string
  readonly byModule?: string
  readonly module?: string
  readonly array?: string
}

/**
 * The pictures that are asked for, as SVG.
 *
 * @throws UsageError when the module or the array is not there, or not said where there are several arrays.
 */
export async function yieldPictures(
  options: PictureOptions,
  project: Project,
  house: House,
  values: YieldValues,
): Promise<OutputFile[]> {
  const { shadeChart: chartPath, byModule: mapPath } = options
  if (chartPath === undefined && mapPath === undefined) return []
  const { moduleMap, renderSvg, shadeChart } = await import('../../drawings/index.js')
  const arrangement = (await house.roof()).values
  const files: OutputFile[] = []
  if (chartPath !== undefined) {
    const { seenSky } = await import('../../yield/index.js')
    const placed = arrangement.modules.map(({ id }) => id)
    const sky = seenSky(project, arrangement.modules, placeWanted(Object.keys(project.arrays), placed, options))
    const from = sky.isModule ? `module ${sky.id}` : `array ${sky.id}, whose modules have no places`
    files.push({ path: chartPath, content: renderSvg(shadeChart({ ...sky, from })) })
  }
  if (mapPath !== undefined) {
    files.push({ path: mapPath, content: renderSvg(moduleMap({ arrangement, modules: values.modules })) })
  }
  return files
}

function placeWanted(
  arrays: readonly string[],
  placed: readonly string[],
  { module, array }: PictureOptions,
): { readonly module: string } | { readonly array: string } {
  if (module !== undefined) {
    if (placed.includes(module)) return { module }
    const some =
      placed.length === 0 ? 'no module of the project has a place' : `such as ${placed.slice(0, 3).join(', ')}`
    throw new UsageError(`--module ${module}: no module with this place; ${some}`)
  }
  if (array !== undefined && !arrays.includes(array)) {
    throw new UsageError(`--array ${array}: no such array; the project has ${arrays.join(', ')}`)
  }
  const only = array ?? (arrays.length === 1 ? arrays[0] : undefined)
  if (only === undefined) {
    throw new UsageError(
      `--shade-chart looks from one place: add --module, or --array with one of ${arrays.join(', ')}`,
    )
  }
  return { array: only }
}
