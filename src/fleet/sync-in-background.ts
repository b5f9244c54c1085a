import { fsync, fsyncSync } from 'node:fs'

/** Asks the disk to keep what was written, without waiting for it; one request at a time. */
export function syncInBackground(file: number): { readonly soon: () => void; readonly stop: () => void } {
  let state: 'rest' | 'busy' | 'again' | 'stopped' = 'rest'
  const begin = (): void => {
    state = 'busy'
    fsync(file, () => {
      if (state === 'again') begin()
      else if (state === 'busy') state = 'rest'
    })
  }
  return {
    soon: () => {
      if (state === 'rest') begin()
      else if (state === 'busy') state = 'again'
    },
    stop: () => {
      state = 'stopped'
      fsyncSync(file)
    },
  }
}
