import type { HouseInput } from '../house/index.js'
import { StageError, type Result } from '../worksheet/index.js'
import type { PaperName } from './draft.js'

/** What a paper is written from: what `loadProject` gives, or a project alone. */
export type PaperInput = Pick<HouseInput, 'project' | 'madeUp'> & {
  /** SHA-256 of the project file, what it names, and `--set`; without it a paper bears no seal. */
  readonly digest?: string
}

export interface SealWish {
  /** Name and version of the program, for the seal of the PDF; without it there is none. */
  readonly tool?: string | undefined
}

/**
 * The PDF of a paper with the seal that `verify-file` knows: build, project, and hashes of the values behind it. The
 * margin of each page says the same.
 *
 * @param draw Draws the paper with that line in its margin; without a tool or a digest there is neither line nor seal.
 * @param stages Stages behind the paper by name; one that cannot run is left out.
 */
export async function sealPaper(
  draw: (imprint?: string) => Promise<Uint8Array>,
  {
    digest,
    draft,
    name,
    tool,
  }: SealWish & { readonly digest: string | undefined; readonly draft: boolean; readonly name: PaperName },
  stages: Readonly<Record<string, () => Promise<Result<unknown>>>>,
): Promise<Uint8Array> {
  if (tool === undefined || digest === undefined) return await draw()
  const values: Record<string, unknown> = {}
  for (const [stage, run] of Object.entries(stages)) {
    try {
      values[stage] = (await run()).values
    } catch (error) {
      if (!(error instanceof StageError)) throw error
    }
  }
  const { imprintOf, sealPdf } = await import('../packet/index.js')
  const origin = { tool, project: digest, values, draft, paper: name }
  return sealPdf(await draw(imprintOf(origin)), origin)
}
