import type { Project } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import { missingGlyphs } from './model/index.js'

/** Parts of the project whose texts stand on the sheets. */
const PRINTED = [
  'title',
  'parties',
  'document',
  'codes',
  'site',
  'roof_planes',
  'arrays',
  'inverter_units',
  'equipment',
  'electrical',
  'structure',
  'site_plan',
  'permit',
  'existing_house',
  'documents',
] as const satisfies readonly (keyof Project)[]

/** @throws StageError when a text of the project has a character that the embedded font cannot print. */
export function checkGlyphs(project: Project): void {
  for (const key of PRINTED) walk(project[key], key)
}

/** @throws StageError when a text of a file beside the project has such a character. */
export function checkTexts(value: unknown, path: string): void {
  walk(value, path)
}

function walk(value: unknown, path: string): void {
  if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) {
      check(key, path)
      walk(inner, `${path}.${key}`)
    }
  } else if (typeof value === 'string') check(value, path)
}

function check(text: string, path: string): void {
  const missing = missingGlyphs(text)
  if (missing.length === 0) return
  const codes = missing.map((each) => {
    const code = `U+${(each.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`
    return /\p{C}|\p{M}/u.test(each) ? code : `'${each}' (${code})`
  })
  throw new StageError(
    path,
    `the font of the drawings cannot print ${codes.join(', ')}`,
    'Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters.',
  )
}
