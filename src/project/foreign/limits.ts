/** Bounds of the work on one file of a stranger. */
export interface ForeignLimits {
  /** Most memory of the thread's objects, MB. */
  readonly memoryMb: number
  /** Longest time that it may work, s. */
  readonly seconds: number
}

/*
 * Common practice, no source: specification sheets and forms of 0.1 to 20 MB were seen to take 40 MB and up to four times their
 * size, and under a second and a tenth of a second for each MB.
 */
const MEMORY_MB = { base: 192, perMb: 8 }
const SECONDS = { base: 10, perMb: 1 }

/** What a file may cost follows from its size, so that a small one cannot take all there is. */
export function foreignLimits(bytes: number): ForeignLimits {
  const megabytes = Math.ceil(bytes / 1e6)
  return {
    memoryMb: MEMORY_MB.base + MEMORY_MB.perMb * megabytes,
    seconds: SECONDS.base + SECONDS.perMb * megabytes,
  }
}
