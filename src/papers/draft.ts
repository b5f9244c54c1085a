import { madeUpFindings, madeUpLines, type HouseInput } from '../house/index.js'
import { sortFindings, type Result } from '../worksheet/index.js'
import type { PageBlock, Paper } from './pages/index.js'
import type { Speaker } from './words/index.js'

/** A paper that people are handed. */
export type PaperName = 'proposal' | 'application' | 'handover'

/** A result without what each stage tells of its own made-up values: `tellMadeUp` tells it once for the whole paper. */
export async function withoutMadeUp<Values>(result: Result<Values>): Promise<Result<Values>> {
  const { isUnconfirmed } = await import('../drawings/index.js')
  return { ...result, findings: result.findings.filter((finding) => !isUnconfirmed(finding)) }
}

/** A result with what is made up behind the paper. */
export function tellMadeUp<Values>(result: Result<Values>, input: HouseInput, paper: PaperName): Result<Values> {
  return { ...result, findings: sortFindings([...result.findings, ...madeUpFindings(input, paper)]) }
}

/** The paper as a draft while something behind it is made up: stamped on every page, and at its end a list of what it is. */
export function draftWhileMadeUp(paper: Paper, input: HouseInput, name: PaperName, say: Speaker): Paper {
  const lines = madeUpLines(input, name)
  if (lines.length === 0) return paper
  const stamp = say.text('draft_stamp')
  const box: PageBlock = {
    kind: 'box',
    tone: 'warning',
    title: say.text('draft_title'),
    lines: [say.text('draft_text')],
  }
  const head = paper.blocks.findIndex(({ kind }) => kind === 'title') + 1
  return {
    ...paper,
    stamp,
    title: `${stamp} - ${paper.title}`,
    blocks: [
      ...paper.blocks.slice(0, head),
      box,
      ...paper.blocks.slice(head),
      { kind: 'heading', text: say.text('draft_list') },
      { kind: 'list', items: lines },
    ],
  }
}
