import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { FontFiles } from '../drawings/index.js'

/** The embedded fonts, from the package that ships them with their licence. */
export function readFonts(): FontFiles {
  const folder = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf')
  return {
    plain: new Uint8Array(readFileSync(join(folder, 'DejaVuSansCondensed.ttf'))),
    bold: new Uint8Array(readFileSync(join(folder, 'DejaVuSansCondensed-Bold.ttf'))),
  }
}
