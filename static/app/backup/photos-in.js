import * as whole from '../store/whole.js';
import { fromBase64 } from './base64.js';

/** @import { Picture } from '../store/records.d.ts' */

/**
 * Pictures that come in beside those that are here. Another picture of the same event is
 * kept under an id that follows from it.
 */
export class PhotosIn {
  /** @type {Map<string, string>} what came in before: its digest by its place */
  #taken = new Map();
  /** @type {Set<string>} */
  #seen = new Set();

  /**
   * Says what comes of a picture: {again: it stood in the file before}, {picture, beside}
   * to be kept, or nothing for what is here.
   *
   * @param {{ job: string, id: string, what: string, data: string }} photo
   * @returns {Promise<{ again?: boolean, picture?: Picture, beside?: boolean }>}
   */
  async take({ job, id, what, data }) {
    const blob = fromBase64(data);
    const hash = await digest(what, blob);
    const first = baseOf(id, hash);
    const line = JSON.stringify([job, first, hash]);
    const again = this.#seen.has(line);
    this.#seen.add(line);
    if (again) return { again };
    for (let at = first; ; at = `${at}~${hash}`) {
      const there = await this.#digestAt(job, at);
      if (there === hash) return {};
      if (there) continue;
      this.#taken.set(JSON.stringify([job, at]), hash);
      return { picture: { job, id: at, what, blob, bytes: blob.size }, beside: at !== first };
    }
  }

  async #digestAt(job, id) {
    const taken = this.#taken.get(JSON.stringify([job, id]));
    if (taken) return taken;
    const [there] = await whole.recordsOf('photos', [[job, id]]);
    return there && digest(there.what, there.blob);
  }
}

/** The id of the event: a picture that was another one may bring one that follows from it. */
function baseOf(id, hash) {
  let base = id;
  while (base.endsWith(`~${hash}`)) base = base.slice(0, -hash.length - 1);
  return base || id;
}

/**
 * @param {string} what
 * @param {Blob} blob
 */
async function digest(what, blob) {
  const bytes = await new Blob([what, '\0', blob]).arrayBuffer();
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...sum.subarray(0, 16)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
