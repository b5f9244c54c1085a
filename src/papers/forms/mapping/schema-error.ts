/** The part of a JSON-Schema validation error that the generated validator declares. */
export interface ErrorObject {
  readonly instancePath: string
  readonly schemaPath: string
  readonly keyword: string
  readonly params: Readonly<Record<string, unknown>>
  readonly message?: string
}
