/** The same work, done when it is first asked for and never again; a promise that fails stays failed. */
export function once<Value>(work: () => Value): () => Value {
  let done: { readonly value: Value } | undefined
  return () => (done ??= { value: work() }).value
}
