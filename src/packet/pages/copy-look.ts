import {
  PDFArray,
  PDFDict,
  PDFName,
  PDFNull,
  PDFRawStream,
  PDFRef,
  PDFStream,
  type PDFContext,
  type PDFObject,
} from '@cantoo/pdf-lib'
import { NEVER, NEVER_TYPES, SHAPES, STREAM_KEYS, type Shape } from './allowed-keys.js'

/** A page cannot be taken over; the message says what is wrong with it. */
export class BrokenPage extends Error {
  override readonly name = 'BrokenPage'
}

const DEEPEST = 200

/** Copies what makes the look of a page from one PDF to another, and nothing else. */
export class LookCopier {
  readonly #from: PDFContext
  readonly #into: PDFContext
  /** By reference and kind, as a reference that is met twice is copied once, and may lead back to itself. */
  readonly #copied = new Map<string, PDFRef>()

  constructor(from: PDFContext, into: PDFContext) {
    this.#from = from
    this.#into = into
  }

  /**
   * @param kind What the object is: a name of `SHAPES`, such a name and `by name`, `list of` one, or `data`.
   * @throws BrokenPage when it is of the wrong kind or not there.
   */
  copy(object: PDFObject | undefined, kind: string, depth = 0): PDFObject {
    if (depth > DEEPEST) throw new BrokenPage('its objects are nested too deeply')
    if (!(object instanceof PDFRef)) return this.#copyValue(object, kind, depth)
    const key = `${object.toString()} ${kind}`
    const known = this.#copied.get(key)
    if (known !== undefined) return known
    const ref = this.#into.nextRef()
    this.#copied.set(key, ref)
    this.#into.assign(ref, this.#copyValue(this.#from.lookup(object), kind, depth))
    return ref
  }

  /** The resources of a page, as a dictionary of its own, so that a stamp can be added to it. */
  copyResources(object: PDFObject | undefined): PDFDict {
    const copy = PDFDict.withContext(this.#into)
    const dict = object instanceof PDFRef ? this.#from.lookup(object) : object
    if (dict === undefined) return copy
    if (!(dict instanceof PDFDict)) throw new BrokenPage('its resources are no dictionary')
    for (const [name, kind] of Object.entries(SHAPES.resources.keys)) {
      const found = this.#from.lookup(dict.get(PDFName.of(name)))
      if (found !== undefined && found !== PDFNull) copy.set(PDFName.of(name), this.#copyValue(found, kind, 1))
    }
    return copy
  }

  #copyValue(value: PDFObject | undefined, kind: string, depth: number): PDFObject {
    const byName = / by name$/u.exec(kind)
    if (byName !== null) return this.#copyMap(value, kind.slice(0, byName.index), depth)
    if (kind.startsWith('list of ')) return this.#copyList(value, kind.slice('list of '.length), depth)
    if (kind === 'image or colours')
      return this.#copyValue(value, value instanceof PDFStream ? 'drawing' : 'data', depth)
    // The name None or Identity stands in the place of some dictionaries.
    if (kind === 'data' || value instanceof PDFName) return this.#copyData(value, depth)
    const shape: Shape | undefined = Object.entries(SHAPES).find(([name]) => name === kind)?.[1]
    if (shape === undefined) throw new Error(`there is no shape ${kind}`)
    return this.#copyShape(value, kind, shape, depth)
  }

  #copyShape(value: PDFObject | undefined, kind: string, { is, keys }: Shape, depth: number): PDFObject {
    if (value === undefined) throw new BrokenPage(`the file lacks a ${kind} that it refers to`)
    const dict = value instanceof PDFRawStream ? value.dict : value
    if (!(dict instanceof PDFDict) || !is.includes(value instanceof PDFStream ? 'stream' : 'dictionary')) {
      throw new BrokenPage(`a ${kind} of it is no ${is}`)
    }
    const copy = PDFDict.withContext(this.#into)
    if (kind === 'drawing') {
      const subtype = this.#subtypeOf(dict)
      // PostScript would be run by a printer.
      if (subtype !== 'Image' && subtype !== 'Form') return this.#emptyForm()
      copy.set(PDFName.of('Subtype'), PDFName.of(subtype))
    }
    for (const [name, inner] of Object.entries(keys)) this.#copyKey(dict, copy, name, inner, depth)
    if (!(value instanceof PDFRawStream)) return copy
    for (const name of STREAM_KEYS) this.#copyKey(dict, copy, name, 'data', depth)
    return PDFRawStream.of(copy, value.contents)
  }

  #copyKey(from: PDFDict, into: PDFDict, name: string, kind: string, depth: number): void {
    const value = from.get(PDFName.of(name))
    if (value !== undefined) into.set(PDFName.of(name), this.copy(value, kind, depth + 1))
  }

  #copyMap(value: PDFObject | undefined, kind: string, depth: number): PDFObject {
    if (!(value instanceof PDFDict)) throw new BrokenPage(`its list of every ${kind} is no dictionary`)
    const copy = PDFDict.withContext(this.#into)
    for (const [name, item] of value.entries()) copy.set(name, this.copy(item, kind, depth + 1))
    return copy
  }

  #copyList(value: PDFObject | undefined, kind: string, depth: number): PDFObject {
    if (!(value instanceof PDFArray)) throw new BrokenPage(`its list of every ${kind} is no array`)
    const copy = PDFArray.withContext(this.#into)
    for (const item of value.asArray()) {
      const found = item instanceof PDFRef ? this.#from.lookup(item) : item
      // The list of a graphics state holds a font and its size.
      copy.push(this.copy(item, found instanceof PDFDict ? kind : 'data', depth + 1))
    }
    return copy
  }

  /** As it stands; what is not there is null. */
  #copyData(value: PDFObject | undefined, depth: number): PDFObject {
    if (value === undefined) return PDFNull
    if (value instanceof PDFArray) {
      const copy = PDFArray.withContext(this.#into)
      for (const item of value.asArray()) copy.push(this.copy(item, 'data', depth + 1))
      return copy
    }
    if (value instanceof PDFDict) return this.#copyPlain(value, () => false, depth) ?? PDFNull
    if (!(value instanceof PDFStream)) return value.clone(this.#into)
    if (!(value instanceof PDFRawStream)) throw new BrokenPage('it has a stream that cannot be read')
    const dict = this.#copyPlain(value.dict, (name) => /^(?:F|FFilter|FDecodeParms|Length)$/u.test(name), depth)
    return dict === undefined ? PDFNull : PDFRawStream.of(dict, value.contents)
  }

  #copyPlain(dict: PDFDict, isLeftOut: (name: string) => boolean, depth: number): PDFDict | undefined {
    const type = this.#from.lookup(dict.get(PDFName.of('Type')))
    if (type instanceof PDFName && NEVER_TYPES.has(type.decodeText())) return undefined
    const copy = PDFDict.withContext(this.#into)
    for (const [name, item] of dict.entries()) {
      const text = name.decodeText()
      if (!NEVER.has(text) && !isLeftOut(text)) copy.set(name, this.copy(item, 'data', depth + 1))
    }
    return copy
  }

  /** The look of an annotation often lacks the word that it is a form. */
  #subtypeOf(dict: PDFDict): string | undefined {
    const subtype = this.#from.lookup(dict.get(PDFName.of('Subtype')))
    if (subtype instanceof PDFName) return subtype.decodeText()
    return dict.has(PDFName.of('BBox')) ? 'Form' : undefined
  }

  #emptyForm(): PDFObject {
    return this.#into.stream('', { Type: 'XObject', Subtype: 'Form', BBox: [0, 0, 0, 0] })
  }
}
