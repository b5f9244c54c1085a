import { flowBlocks, type Block, type SheetDraft } from '../layout/index.js'
import { continued, type SheetJob } from './job.js'

/** Sheet G-002: the reviewer's comments with the answers, and the sheets that show them. None without comments. */
export function responseSheets(job: SheetJob): SheetDraft[] {
  const { comments } = job.input
  if (comments === undefined) return []
  const from = [comments.reviewer, comments.date].filter((each) => each !== undefined)
  const blocks: Block[] = [
    { kind: 'heading', text: 'Answers to the comments of the plan review' },
    ...(from.length === 0 ? [] : [{ kind: 'text', text: `Comments by ${from.join(', ')}.` } as const]),
    {
      kind: 'table',
      columns: [
        { heading: 'No.', share: 0.06, bold: true },
        { heading: 'Comment', share: 0.42 },
        { heading: 'Answer', share: 0.42 },
        { heading: 'Sheet', share: 0.1 },
      ],
      rows: comments.comments.map(({ number, comment, answer, sheet = '' }) => [number, comment, answer, sheet]),
    },
  ]
  return flowBlocks(blocks, job.stationery.body).map((paper, page) => ({
    id: continued('G-002', page),
    title: page === 0 ? 'Answers to comments' : 'Answers to comments, continued',
    scale: 'None',
    paper,
  }))
}
