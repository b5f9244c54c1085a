/** On a busy machine a thread may wait this many times as long as it works before it counts as stuck. */
const MOST_WAITING = 20

/**
 * Measures how long a thread has worked: by the clock of the machine, yet no more than what all threads of the program have
 * worked together, so that a busy machine gives up no sound file. What it is stopped for does not count.
 */
export class WorkClock {
  #leftMs: number
  #waitingMs: number
  #timer: NodeJS.Timeout | undefined
  #began = { wall: 0, cpu: process.cpuUsage() }
  readonly #over: () => void

  /** @param over What is done when the time is over. */
  constructor(seconds: number, over: () => void) {
    this.#leftMs = seconds * 1000
    this.#waitingMs = seconds * 1000 * MOST_WAITING
    this.#over = over
  }

  start(): void {
    this.#began = { wall: performance.now(), cpu: process.cpuUsage() }
    this.#timer = setTimeout(
      () => {
        this.stop()
        if (this.#leftMs <= 0 || this.#waitingMs <= 0) this.#over()
        else this.start()
        // Not more often than ten times a second, where the rest is very short.
      },
      Math.max(100, this.#leftMs),
    )
  }

  stop(): void {
    if (this.#timer === undefined) return
    clearTimeout(this.#timer)
    this.#timer = undefined
    const { user, system } = process.cpuUsage(this.#began.cpu)
    const wallMs = performance.now() - this.#began.wall
    this.#waitingMs -= wallMs
    this.#leftMs -= Math.min(wallMs, (user + system) / 1000)
  }
}
