import {
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRef,
  PDFString,
  type PDFContext,
  type PDFObject,
} from '@cantoo/pdf-lib'

/*
 * Reading of objects that may be of any kind, as files of strangers are: what is not of the kind that is wanted is not
 * there.
 */

/** The value of a key, references followed. */
export function valueOf(dict: PDFDict, key: string): PDFObject | undefined {
  return dict.context.lookup(dict.get(PDFName.of(key)))
}

export function dictOf(dict: PDFDict, key: string): PDFDict | undefined {
  const value = valueOf(dict, key)
  return value instanceof PDFDict ? value : undefined
}

/** The entries of a list, references followed; none when there is no list. */
export function listOf(value: PDFObject | undefined, context: PDFContext): (PDFObject | undefined)[] {
  return value instanceof PDFArray ? value.asArray().map((item) => context.lookup(item)) : []
}

export function numberOf(value: PDFObject | undefined): number | undefined {
  return value instanceof PDFNumber && Number.isFinite(value.asNumber()) ? value.asNumber() : undefined
}

/** Text of a string or a name. */
export function textOf(value: PDFObject | undefined): string | undefined {
  if (value instanceof PDFName) return nameText(value)
  return value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : undefined
}

/** What a name says: its bytes are UTF-8 where they can be. */
export function nameText(name: PDFName): string {
  const bytes = name.asBytes()
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** A text string: in plain letters where that is enough, else in UTF-16. */
export function pdfText(text: string): PDFObject {
  return /^[\n\r\u0020-\u007E]*$/u.test(text)
    ? PDFString.of(text.replaceAll(/[\\()]/gu, String.raw`\$&`).replaceAll('\r', String.raw`\r`))
    : PDFHexString.fromText(text)
}

/** The dictionary of an item of a list, with the reference to it. */
export function dictsOf(
  value: PDFObject | undefined,
  context: PDFContext,
): { readonly dict: PDFDict; readonly ref: PDFRef | undefined }[] {
  if (!(value instanceof PDFArray)) return []
  return value.asArray().flatMap((item) => {
    const dict = context.lookup(item)
    return dict instanceof PDFDict ? [{ dict, ref: item instanceof PDFRef ? item : undefined }] : []
  })
}
