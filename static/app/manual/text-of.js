// The text of a file that was chosen, dropped or shared: what its bytes say by themselves
// about how they are written counts, and what is no text is told apart.

const pdf = '%PDF-';
const cards = /^\s*\{\s*"format"\s*:\s*"tidysump-/;

// Signs that no text has, but for a few that programs leave in what is copied from them.
const strange = /[^\P{Cc}\s]/gu;
const headLength = 4096; // bytes that tell what a file is, however large
const widest = 2; // bytes of a letter where UTF-8 takes one
const strangeAtMost = 0.1; // of the signs of a text

const isText = (text) =>
  !text.includes('\0') && (text.match(strange) ?? []).length <= text.length * strangeAtMost;

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
  const head = await bytesOf(file.slice(0, headLength));
  if (new TextDecoder().decode(head.subarray(0, pdf.length)) === pdf)
    return { fault: 'manual.is-pdf' };
  if (!isText(decode(head))) return { fault: 'manual.no-text' };
  if (file.size > most * widest) return { fault: 'manual.too-large' };
  const text = clean(decode(await bytesOf(file)));
  if (new TextEncoder().encode(text).length > most) return { fault: 'manual.too-large' };
  if (!isText(text)) return { fault: 'manual.no-text' };
  if (cards.test(text)) return { fault: 'manual.is-cards' };
  return text.trim() ? { text } : { fault: 'manual.empty' };
}

/** @param {Blob} file */
const bytesOf = async (file) => new Uint8Array(await file.arrayBuffer());

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
