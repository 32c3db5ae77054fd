// The text of a file that was chosen, dropped or shared: what its bytes say by themselves
// about how they are written counts, and what is no text is told apart.

const pdf = '%PDF-';

/** Removes what no text holds: halves of letters, and a mark of the order of bytes. */
export const clean = (text) =>
  new TextDecoder().decode(new TextEncoder().encode(text)).replace(/\r\n?/g, '\n');

/**
 * Reads a file; resolves to {text}, or to {fault}, a word that says what it is instead.
 *
 * @param {Blob} file
 * @param {number} most bytes
 */
export async function textOf(file, most) {
  if (file.size > most) return { fault: 'manual.too-large' };
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (new TextDecoder().decode(bytes.subarray(0, pdf.length)) === pdf)
    return { fault: 'manual.is-pdf' };
  const text = clean(decode(bytes));
  if (text.includes('\0')) return { fault: 'manual.no-text' };
  return text.trim() ? { text } : { fault: 'manual.empty' };
}

/** @param {Uint8Array<ArrayBuffer>} bytes */
function decode(bytes) {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes); // what older programs write
  }
}
