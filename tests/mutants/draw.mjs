import { createHash } from 'node:crypto'

const rank = (seed, site) =>
  createHash('sha256').update([seed, site.file, site.kind, site.before, site.after].join('\0')).digest('hex')

/** Entries by a key, in the order in which the keys appear. */
export function groupBy(entries, keyOf) {
  const groups = new Map()
  for (const entry of entries) {
    const key = keyOf(entry)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [entry])
    else group.push(entry)
  }
  return groups
}

/**
 * Draws faults by a seed: of each room about the same number, of each kind in turn, of one file at most a few.
 * What is drawn of a line depends on the line and the seed alone, so that a change elsewhere leaves the rest of the draw as it is.
 * @param {Map<string, object[]>} sitesByRoom
 */
export function drawSites(sitesByRoom, { seed, count, mostOfFile = 4 }) {
  const share = Math.ceil(count / sitesByRoom.size)
  const drawn = []
  for (const [room, sites] of sitesByRoom) {
    const ranked = sites
      .map((site) => ({ ...site, room, rank: rank(seed, site) }))
      .toSorted((a, b) => (a.rank < b.rank ? -1 : 1))
    const kinds = groupBy(ranked, (site) => site.kind)
    const ofFile = new Map()
    let taken = 0
    while (taken < share && kinds.size > 0) {
      for (const [kind, left] of kinds) {
        const next = left.findIndex((site) => (ofFile.get(site.file) ?? 0) < mostOfFile)
        if (next < 0) {
          kinds.delete(kind)
          continue
        }
        const [site] = left.splice(next, 1)
        ofFile.set(site.file, (ofFile.get(site.file) ?? 0) + 1)
        drawn.push(site)
        if (++taken === share) break
      }
    }
  }
  return drawn.toSorted((a, b) => (a.rank < b.rank ? -1 : 1)).slice(0, count)
}
