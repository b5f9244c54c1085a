import type { LoadOptions } from './load-options.js'
import { ProjectError } from './project-error.js'
import { LARGEST_YAML_BYTES } from './budgets.js'
import { decodeText, FileTrouble, readBytes, readStandardInput, tooLarge } from './read-file.js'

/**
 * Text of the project file itself.
 *
 * @throws ProjectError when there is none.
 */
export function readMain(file: string, { path, text }: Pick<LoadOptions, 'path' | 'text'>): string {
  try {
    return decodeText(mainBytes(path, text))
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error
    throw new ProjectError([{ file, path: '', message: error.message }], error.unreadable ? 3 : 2)
  }
}

function mainBytes(path: string, text: string | undefined): Uint8Array {
  if (path !== '-') return readBytes(path, LARGEST_YAML_BYTES)
  if (text === undefined) return readStandardInput(LARGEST_YAML_BYTES)
  const bytes = Buffer.from(text, 'utf8')
  if (bytes.length > LARGEST_YAML_BYTES) throw tooLarge(bytes.length, LARGEST_YAML_BYTES, false)
  return bytes
}
