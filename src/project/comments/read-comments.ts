import type { Complaint } from '../explain/complaint.js'
import { readCheckedYaml, type CheckedYaml } from '../read-checked-yaml.js'
import { listWords, showValue } from '../words.js'
import { commentsSchema } from './comments-schema.generated.js'
import type { ReviewComments } from './comments-types.generated.js'
import { validate } from './comments-validator.generated.js'

/** Comments that are right by themselves, with the way to refuse them for sheets that there are not. */
export type ReadComments = CheckedYaml<ReviewComments>

/**
 * Reads the comments of a plan reviewer with their answers.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/comments.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readComments(file: string, text: string): ReadComments {
  return readCheckedYaml<ReviewComments>(file, text, { schema: commentsSchema, validate, check: checkNumbers })
}

function checkNumbers({ comments }: ReviewComments): Complaint[] {
  return comments.flatMap(({ number }, index): Complaint[] =>
    comments.findIndex((other) => other.number === number) === index
      ? []
      : [
          {
            segments: ['comments', index, 'number'],
            at: 'value',
            message: `${showValue(number)} is the number of an earlier comment too; give each its own`,
          },
        ],
  )
}

/**
 * Looks whether the sheets that answers name are in the packet.
 *
 * @throws ProjectError with the place of each that is not.
 */
export function checkCommentSheets({ data, refuse }: ReadComments, sheets: readonly string[]): void {
  const wrong = data.comments.flatMap(({ sheet }, index): Complaint[] =>
    sheet === undefined || sheets.includes(sheet)
      ? []
      : [
          {
            segments: ['comments', index, 'sheet'],
            at: 'value',
            message: `${showValue(sheet)} is no sheet of this packet; sheets: ${listWords(sheets, 60)}`,
          },
        ],
  )
  if (wrong.length > 0) throw refuse(wrong)
}
