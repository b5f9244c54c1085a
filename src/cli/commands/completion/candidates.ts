import { join } from 'node:path'
import type { EquipmentKind } from '../../../project/index.js'

/** What a word is a value of, where the program has to be asked. */
export type AskedKind = 'keys' | 'arrays' | 'editions' | 'sites' | 'explained'

/** Options whose values are looked up. */
export const ASKED_OPTIONS: Readonly<Record<string, AskedKind>> = {
  '--set': 'keys',
  '--array': 'arrays',
  '--codes': 'editions',
  '--site': 'sites',
}

/** Subcommands whose words are looked up. */
export const ASKED_OPERANDS: Readonly<Record<string, AskedKind>> = { explain: 'explained', 'list-sites': 'sites' }

/** More than a person reads; a shell asks before it prints a hundred. */
const MOST = 400

/**
 * How the last of some words can go on.
 *
 * @param words What stands after the program's name; the last one is begun.
 * @returns Whole words that begin as it does.
 */
export async function candidates(words: readonly string[], folder = '.'): Promise<string[]> {
  const begun = words.at(-1) ?? ''
  const [subcommand = ''] = words.filter((word) => !word.startsWith('-'))
  const inOption = /^(--[a-z-]+)=(.*)$/u.exec(begun)
  if (inOption !== null) {
    const [, option = '', value = ''] = inOption
    const kind = kindOf(option)
    if (kind === undefined) return []
    return (await found(kind, value, words, folder)).map((one) => `${option}=${one}`)
  }
  const kind = kindOf(words.at(-2) ?? '') ?? operandOf(subcommand, words)
  return kind === undefined ? [] : (await found(kind, begun, words, folder)).slice(0, MOST)
}

function kindOf(option: string): AskedKind | undefined {
  return Object.hasOwn(ASKED_OPTIONS, option) ? ASKED_OPTIONS[option] : undefined
}

function operandOf(subcommand: string, words: readonly string[]): AskedKind | undefined {
  const isFirst = words.filter((word) => !word.startsWith('-')).length <= 2
  return isFirst && Object.hasOwn(ASKED_OPERANDS, subcommand) ? ASKED_OPERANDS[subcommand] : undefined
}

async function found(kind: AskedKind, begun: string, words: readonly string[], folder: string): Promise<string[]> {
  switch (kind) {
    case 'keys':
      return keysFor(begun, words, folder)
    case 'arrays': {
      const arrays = (await projectIn(words, folder))?.['arrays']
      const ids = typeof arrays === 'object' && arrays !== null ? Object.keys(arrays) : []
      return ids.filter((id) => id.startsWith(begun))
    }
    case 'editions': {
      const { editions } = await import('../../../tables/nec/index.js')
      const done = begun.slice(0, begun.lastIndexOf(',') + 1)
      return editions.map((edition) => `${done}${edition}`).filter((one) => one.startsWith(begun))
    }
    case 'sites':
      return sitesFor(begun)
    case 'explained':
      return explainedFor(begun, words, folder)
  }
}

/** The first project file among the words, as far as it can be read. */
async function projectIn(words: readonly string[], folder: string): Promise<Record<string, unknown> | undefined> {
  const { dataAtHand } = await import('../../../project/index.js')
  for (const word of words.slice(0, -1)) {
    const data = /\.ya?ml$/u.test(word) ? dataAtHand(join(folder, word)) : undefined
    if (data !== undefined) return data
  }
  return undefined
}

async function keysFor(begun: string, words: readonly string[], folder: string): Promise<string[]> {
  const { completeKey, EQUIPMENT_GROUPS } = await import('../../../project/index.js')
  const kind = (Object.keys(EQUIPMENT_GROUPS) as EquipmentKind[]).find((one) => words.includes(`--${one}`))
  if (words[0] !== 'add-equipment') return completeKey(begun, await projectIn(words, folder), '=')
  if (kind === undefined) return []
  // A data sheet has the keys of one piece alone.
  const above = `equipment.${EQUIPMENT_GROUPS[kind]}.id.`
  return completeKey(`${above}${begun}`, undefined, '=').map((one) => one.slice(above.length))
}

async function sitesFor(begun: string): Promise<string[]> {
  const { listSites } = await import('../../../climate/index.js')
  const lower = begun.toLowerCase()
  return listSites({})
    .flatMap(({ name, state, wmo }) => [`${name}, ${state}`, ...(/^\d/u.test(begun) ? [wmo] : [])])
    .filter((one) => one.toLowerCase().startsWith(lower))
}

async function explainedFor(begun: string, words: readonly string[], folder: string): Promise<string[]> {
  const { EXPLANATIONS, GLOSSARY, TOPICS } = await import('../../explanations/index.js')
  const { completeKey } = await import('../../../project/index.js')
  const known = [
    ...Object.keys(EXPLANATIONS).filter((id) => !id.startsWith('*')),
    ...Object.keys(GLOSSARY),
    ...Object.keys(TOPICS),
  ]
  const keys = completeKey(begun, await projectIn(words, folder), '')
  return [...new Set([...keys, ...known.filter((one) => one.startsWith(begun))])]
}

/** Words as a person meant them: bash parts them at each `=` and leaves quotes and backslashes in. */
export function wordsOfBash(raw: readonly string[]): { readonly words: string[]; readonly cut: number } {
  const words: string[] = []
  let cut = 0
  raw.forEach((piece, i) => {
    const plain = piece.replace(/^["']/u, '').replaceAll(/\\(.)/gu, '$1')
    const joins = piece === '=' || raw[i - 1] === '='
    const last = words.at(-1)
    if (joins && last !== undefined) {
      if (i === raw.length - 1) cut = last.length + (piece === '=' ? 1 : 0)
      words[words.length - 1] = last + plain
    } else words.push(plain)
  })
  return { words, cut }
}
