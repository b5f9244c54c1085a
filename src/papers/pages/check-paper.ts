import { checkTexts } from '../../drawings/index.js'
import type { Paper } from './page-block.js'

/**
 * Whether the embedded font has every character of a paper. A text of the project is best checked under its own key before.
 *
 * @param where Key of the project that the error names.
 * @throws StageError with the characters that are missing.
 */
export function checkPaper({ title, foot, blocks }: Paper, where: string): void {
  checkTexts(Object.values({ title, foot, blocks }), where)
}
