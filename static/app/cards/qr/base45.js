// Base45 (RFC 9285): bytes in the letters that a QR code holds best.
const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';
const base = letters.length;

/** The bytes as text: three letters for two bytes, two for one that is left. */
export function toBase45(bytes) {
  let text = '';
  for (let at = 0; at < bytes.length; at += 2) {
    const pair = at + 1 < bytes.length;
    let rest = pair ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
    for (let n = pair ? 3 : 2; n > 0; n--) {
      text += letters[rest % base];
      rest = Math.floor(rest / base);
    }
  }
  return text;
}

/** The bytes of a text; undefined if it is none of this kind. */
export function fromBase45(text) {
  if (text.length % 3 === 1) return undefined;
  const bytes = [];
  for (let at = 0; at < text.length; at += 3) {
    const values = [...text.slice(at, at + 3)].map((letter) => letters.indexOf(letter));
    const sum = values.reduceRight((higher, value) => higher * base + value, 0);
    const most = values.length === 3 ? 0xffff : 0xff;
    if (values.includes(-1) || sum > most) return undefined;
    if (values.length === 3) bytes.push(sum >> 8);
    bytes.push(sum & 0xff);
  }
  return Uint8Array.from(bytes);
}
