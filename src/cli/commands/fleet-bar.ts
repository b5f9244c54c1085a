import { progressBar } from '../../fleet/index.js'
import { writeErr } from '../streams.js'

/** A bar on stderr that is drawn over itself; nothing at all when it is no terminal. */
export interface Bar {
  /** @param recalled How many of all so far were not worked out now. */
  readonly step: (recalled: number) => void
  /** Makes room for a message. */
  readonly clear: () => void
}

const REDRAW_MS = 100

export function makeBar(total: number, quiet: boolean): Bar {
  if (!process.stderr.isTTY || quiet) return { step: () => undefined, clear: () => undefined }
  const began = performance.now()
  let [done, drawn] = [0, -Infinity]
  return {
    step: (recalled) => {
      done += 1
      const now = performance.now()
      if (now - drawn < REDRAW_MS && done < total) return
      drawn = now
      const width = process.stderr.columns ?? 80
      writeErr(`\r\u001B[K${progressBar({ done, total, recalled, seconds: (now - began) / 1000 }, width)}`)
    },
    clear: () => writeErr('\r\u001B[K'),
  }
}
