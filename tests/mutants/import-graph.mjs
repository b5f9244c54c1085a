import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'

/** What a file loads when it runs: not what it takes types from. */
const IMPORT = /\b(?:import|export)\s+(?!type\b)(?:[^'"`;]*?\bfrom\s+)?'(\.[^']+)'|\bimport\('(\.[^']+)'\)/gu

/**
 * Which files load which, straight or by way of others.
 * @param {string} root folder of the checkout
 * @param {readonly string[]} files paths below it
 * @returns {Map<string, string[]>} of each file those that it loads straight
 */
export function importGraph(root, files) {
  return new Map(
    files.map((file) => {
      const source = readFileSync(join(root, file), 'utf8')
      const loaded = [...source.matchAll(IMPORT)].map(([, one, other]) =>
        posix.join(dirname(file), one ?? other).replace(/\.js$/, '.ts'),
      )
      return [file, loaded.filter((each) => existsSync(join(root, each)))]
    }),
  )
}

/** Whether a file loads another, straight or by way of others. @param {ReturnType<typeof importGraph>} graph */
export function loads(graph, file, wanted) {
  const seen = new Set([file])
  for (const each of seen) for (const next of graph.get(each) ?? []) seen.add(next)
  return seen.has(wanted)
}
