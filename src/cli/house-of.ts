import { runHouse, type EarlierResults, type House, type HouseWishes } from '../house/index.js'
import type { CommandContext } from './subcommand.js'

/**
 * The stages of the project of a run.
 *
 * @param takes Stages that a file of `--use` stands in for.
 * @throws ProjectError when the project is wrong, UsageError or FileError when a file of `--use` cannot be taken.
 */
export async function houseOf(
  context: CommandContext,
  takes: readonly (keyof EarlierResults)[],
  wishes?: HouseWishes,
): Promise<House> {
  const loaded = await context.project()
  const earlier: Record<string, unknown> = {}
  // The values of a file were checked against the schema of its stage when it was read.
  for (const stage of takes) earlier[stage] = await context.earlier(stage)
  return runHouse(loaded, { earlier, wishes })
}
