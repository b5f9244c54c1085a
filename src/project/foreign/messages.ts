import type { CarriedError } from './carried-error.js'

/** What the two threads say to each other. */
export type ToWorker =
  | { readonly kind: 'task'; readonly name: string; readonly input: unknown }
  | { readonly kind: 'answer'; readonly number: number; readonly value: unknown }

export type FromWorker =
  | { readonly kind: 'ready' }
  | { readonly kind: 'question'; readonly number: number; readonly question: string }
  | { readonly kind: 'done'; readonly output: unknown }
  | { readonly kind: 'failed'; readonly error: CarriedError }
