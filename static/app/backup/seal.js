// The end of a backup: it says what the bytes before it are, so that a file which
// was cut or changed is known before anything of it is used.

const piece = 1 << 20; // bytes; digests are made of pieces, since browsers make none of a stream

const sha = async (bytes) => new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
const hex = (bytes) => [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('');

const whole = async (digests) => {
  const all = new Uint8Array(32 * digests.length);
  digests.forEach((digest, n) => all.set(digest, 32 * n));
  return hex(await sha(all));
};

/** Gathers bytes into the parts of a Blob, and their digest. */
export class Pieces {
  parts = [];
  #open = new Uint8Array(piece);
  #filled = 0;
  #digests = [];

  async add(bytes) {
    for (let at = 0; at < bytes.length;) {
      const taken = bytes.subarray(at, at + piece - this.#filled);
      this.#open.set(taken, this.#filled);
      this.#filled += taken.length;
      at += taken.length;
      if (this.#filled === piece) await this.#close();
    }
  }

  async #close() {
    const bytes = this.#open.slice(0, this.#filled);
    this.#digests.push(await sha(bytes));
    this.parts.push(new Blob([bytes])); // a browser may put it on the disk
    this.#filled = 0;
  }

  /** The digest of all that was added. */
  async end() {
    if (this.#filled) await this.#close();
    return whole(this.#digests);
  }
}

/** The digest of the first bytes of a file; a signal stops it. */
export async function digestOf(file, end, signal) {
  const digests = [];
  for (let at = 0; at < end; at += piece) {
    signal?.throwIfAborted();
    digests.push(await sha(await file.slice(at, Math.min(at + piece, end)).arrayBuffer()));
  }
  return whole(digests);
}

/** The last bytes of a file whose others have that digest: a line, or a gzip member that holds it. */
export function seal(digest, zipped) {
  const line = new TextEncoder().encode(`{"seal":"${digest}"}\n`);
  return zipped ? stored(line) : line;
}

/** How many bytes a seal has. */
export const sealSize = (zipped) => seal('0'.repeat(64), zipped).length;

/** A gzip member that holds bytes as they are (RFC 1952, RFC 1951 section 3.2.4). */
function stored(bytes) {
  const out = new DataView(new ArrayBuffer(bytes.length + 23));
  [0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255, 1].forEach((byte, n) => out.setUint8(n, byte));
  out.setUint16(11, bytes.length, true);
  out.setUint16(13, ~bytes.length, true);
  new Uint8Array(out.buffer).set(bytes, 15);
  out.setUint32(bytes.length + 15, crc32(bytes), true);
  out.setUint32(bytes.length + 19, bytes.length, true);
  return new Uint8Array(out.buffer);
}

function crc32(bytes) {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 && 0xedb88320);
  }
  return ~crc >>> 0;
}
