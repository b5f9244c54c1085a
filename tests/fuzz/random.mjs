/** A seeded source of chance: the same seed and index give the same input on every machine. */
export class Chance {
  #state

  /** @param {number} seed @param {number} index */
  constructor(seed, index) {
    this.#state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(index + 1, 0xc2b2ae35)) >>> 0
    for (let round = 0; round < 4; round++) this.next()
  }

  /** A number from 0 up to, not including, 1 (mulberry32). */
  next() {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0
    let t = this.#state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  /** A whole number from 0 to `count - 1`. */
  below(count) {
    return Math.floor(this.next() * count)
  }

  /** True in `share` of all cases. */
  chance(share) {
    return this.next() < share
  }

  /** One of a list. */
  of(list) {
    return list[this.below(list.length)]
  }

  /** Few more often than many: 1, 2, 3 ... up to `most`. */
  few(most) {
    let count = 1
    while (count < most && this.chance(0.5)) count++
    return count
  }
}
