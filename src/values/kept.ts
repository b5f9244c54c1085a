/** Values that were worked out, by a text that tells all that they follow from; only those asked for last, so that memory is bounded. */
export class Kept<Value> {
  readonly #most: number
  /** The one asked for last at the end. */
  readonly #values = new Map<string, Value>()

  /** @param most Values that are kept. */
  constructor(most: number) {
    this.#most = most
  }

  /** The value of a text, made when it is not there; what fails is not kept. */
  of(text: string, make: () => Value): Value {
    const known = this.#values.get(text)
    const value = known ?? make()
    if (known !== undefined) this.#values.delete(text)
    this.#values.set(text, value)
    const [oldest] = this.#values.keys()
    if (this.#values.size > this.#most && oldest !== undefined) this.#values.delete(oldest)
    return value
  }
}
