/** Packs bytes in zlib's format. */
export type Pack = (bytes: Uint8Array) => Uint8Array

/** What pdfkit keeps to itself of a stream on its way into the file. */
interface Stream {
  compress: boolean
  buffer: Uint8Array[]
  write: (chunk: Uint8Array | string) => void
  finalize: () => void
}

/**
 * Has every stream of a document packed by `pack`. pdfkit packs with what the machine has, which is not the same in Node and
 * in a browser, nor in two versions of Node: the same pages would not be the same bytes. Its thousands of lines become
 * bytes together.
 */
export function packStreams(doc: PDFKit.PDFDocument, pack: Pack): void {
  const make = doc.ref.bind(doc)
  doc.ref = (data) => {
    const made = make(data)
    const stream = made as unknown as Stream
    const write = stream.write.bind(stream)
    const finalize = stream.finalize.bind(stream)
    let lines: string[] = []
    const writeLines = () => {
      if (lines.length > 0) write(lines.join('\n'))
      lines = []
    }
    stream.write = (chunk) => {
      if (typeof chunk === 'string') {
        lines.push(chunk)
        return
      }
      writeLines()
      write(chunk)
    }
    stream.finalize = () => {
      writeLines()
      if (stream.compress && stream.buffer.length > 0) {
        stream.buffer = [pack(joined(stream.buffer))]
        stream.compress = false
      }
      finalize()
    }
    return made
  }
}

/** Chunks as one. */
export function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}
