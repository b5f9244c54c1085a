import { cleanLine } from '../../../report/index.js'
import { UsageError } from '../../errors.js'
import type { Answers, Question } from './questions.js'

/** Where answers come from, and where questions go. */
export interface Lines {
  /** Says something above the next question. */
  readonly say: (text: string) => void
  /** The line that follows a prompt; undefined at the end of input. */
  readonly next: (prompt: string) => Promise<string | undefined>
}

/** Longest answer that is read, characters. */
const LONGEST = 500
/** Lines for all questions; a pipe may give the same wrong answer without end. */
const MOST_LINES = 1000

/**
 * Asks one question after the other; an answer that cannot be taken is told with its reason and asked for again.
 *
 * @throws UsageError when the input ends before the last question, or gives lines without end.
 */
export async function askAll(questions: readonly Question[], lines: Lines): Promise<Answers> {
  lines.say(
    `${questions.length} questions. Enter takes what stands in [brackets], ? explains; what is left out is made up and marked in the file.`,
  )
  const counted = countedLines(lines)
  const answers: Record<string, string | undefined> = {}
  for (const [index, question] of questions.entries()) {
    answers[question.key] = await answerTo(question, answers, `${index + 1}/${questions.length}`, counted)
  }
  return answers
}

function countedLines(lines: Lines): Lines {
  let count = 0
  return {
    say: lines.say,
    next: async (prompt) => {
      count += 1
      if (count > MOST_LINES)
        throw new UsageError(
          `more than ${MOST_LINES} lines answered no question to its end, and nothing was written; use --answers FILE`,
        )
      return await lines.next(prompt)
    },
  }
}

async function answerTo(
  question: Question,
  answers: Answers,
  number: string,
  lines: Lines,
): Promise<string | undefined> {
  const { key, text, help, fallback, refuse } = question
  const offer = fallback === undefined ? '' : ` [${fallback(answers)}]`
  for (;;) {
    const line = await lines.next(`${number} ${text}${offer}: `)
    if (line === undefined)
      throw new UsageError(
        `the input ends at question ${number} (${key}), and nothing was written; ask again, or use --answers FILE`,
      )
    const answer = line.trim()
    if (answer === '?') lines.say(help)
    else if (answer.length > LONGEST)
      lines.say(`an answer has at most ${LONGEST} characters; this one has ${answer.length}`)
    else if (answer === '') {
      if (fallback !== undefined) return undefined
      lines.say('an answer is needed here; ? explains')
    } else {
      const reason = refuse(answer, answers)
      if (reason === undefined) return answer
      lines.say(cleanLine(reason))
    }
  }
}
