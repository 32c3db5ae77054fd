/** Whether this browser can do it: some know streams that compress, but not this format. */
export function canDeflate() {
  try {
    return [CompressionStream, DecompressionStream].every((Stream) => new Stream('deflate-raw'));
  } catch {
    return false;
  }
}

const through = (bytes, stream) => new Blob([bytes]).stream().pipeThrough(stream);

/** The bytes of a text, deflated (RFC 1951). */
export async function deflate(text) {
  const stream = through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** The text of deflated bytes; rejects when they are damaged or hold more than `most` bytes. */
export async function inflate(bytes, most) {
  const reader = through(bytes, new DecompressionStream('deflate-raw')).getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let text = '';
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new RangeError('too-large');
    }
    text += decoder.decode(value, { stream: true });
  }
}
