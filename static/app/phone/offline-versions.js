import { agreementName, cacheName, namedByContent, versionsIn } from './offline-rules.js';

// Entries that are no files of the site: no file has such a name.
const agreementEntry = '/agreement';
const listEntry = '/list'; // written last: a version that has it was once whole

/**
 * What a person agreed to.
 *
 * @typedef {{ agreed?: string, previous?: string }} Agreement
 *
 * Files of a version: path -> SHA-256 of what is behind it, in hex
 * @typedef {Map<string, string>} Files
 */

/**
 * The versions of the app that this phone keeps, each whole, in a cache of its own.
 * What is served is the version that the person agreed to, whichever worker is
 * active: one that came to be active since all windows were closed goes on with it.
 */
export class Versions {
  #own;
  #files;
  #caches;
  #fetch;
  /** @type {Promise<Agreement> | undefined} */
  #agreement;

  /**
   * `own` is the version of this worker and `files` what it consists of, [path,
   * SHA-256].
   *
   * @param {string} own
   * @param {[path: string, sum: string][]} files
   * @param {CacheStorage} caches
   * @param {(request: any, init?: RequestInit) => Promise<Response>} fetch
   */
  constructor(own, files, caches, fetch) {
    this.#own = own;
    this.#files = new Map(files);
    this.#caches = caches;
    this.#fetch = fetch;
  }

  /**
   * Fetches the worker's own version, all of it or none: every file is compared with
   * the sum that the build gave it, so that no mixture of two versions and nothing
   * that was cut off comes in. `first` says that no version is in charge yet.
   */
  async install(first = false) {
    const got = await Promise.all(
      [...this.#files].map(
        async ([path, sum]) => /** @type {const} */ ([path, await this.#checked(path, sum)]),
      ),
    );
    const cache = await this.#caches.open(cacheName(this.#own));
    const list = new Response(JSON.stringify([...this.#files]));
    try {
      for (const [path, response] of got) await cache.put(path, response);
      await cache.put(listEntry, list);
    } catch (error) {
      if (!(await cache.match(listEntry))) await this.#caches.delete(cacheName(this.#own));
      throw error;
    }
    if (first) await this.agree();
  }

  /**
   * Settles what is served from now on: the version that the person agreed to. A worker
   * of before there was such an agreement left none, and its pages can't make one: its
   * successor takes over as it always did. So does one whose predecessor's files are gone.
   */
  async settle() {
    const { agreed } = await this.#read();
    if (!agreed || !(await this.#stands(agreed))) await this.agree();
  }

  /** Serves this worker's version from now on: the person agreed to it. */
  async agree() {
    const { agreed, previous } = await this.#read();
    if (agreed === this.#own) return;
    const others = versionsIn(await this.#caches.keys()).filter((other) => other !== this.#own);
    const agreement = { agreed: this.#own, previous: agreed ?? previous ?? others.at(-1) };
    const cache = await this.#caches.open(agreementName);
    await cache.put(agreementEntry, new Response(JSON.stringify(agreement)));
    this.#agreement = Promise.resolve(agreement);
  }

  /** The version that is served. */
  async served() {
    const { agreed } = await this.#read();
    return agreed && (await this.#stands(agreed)) ? agreed : this.#own;
  }

  /** Takes away the versions that no window can be of any more. */
  async cleanUp() {
    const { agreed, previous } = await this.#read();
    const stay = [this.#own, agreed, previous];
    const gone = versionsIn(await this.#caches.keys()).filter((other) => !stay.includes(other));
    await Promise.all(gone.map((version) => this.#caches.delete(cacheName(version))));
  }

  /** How many files of the version that is served are here, and of how many: {have, want}. */
  async count() {
    const { missing, want } = await this.#missing(await this.served());
    return { have: want - missing.length, want };
  }

  /** Fetches anew what the browser dropped of the version that is served, as far as it can be had. */
  async mend() {
    const version = await this.served();
    const { missing } = await this.#missing(version);
    const cache = await this.#caches.open(cacheName(version));
    await Promise.allSettled(
      missing.map(async ([path, sum]) => cache.put(path, await this.#checked(path, sum))),
    );
  }

  /**
   * Answers a request of a page. A window of another version than the one that is
   * served gets its own parts all the same: their names hold what they are.
   *
   * @param {{ url: string, mode?: string }} request
   * @returns {Promise<Response>}
   */
  async answer(request) {
    const { pathname } = new URL(request.url);
    this.#agreement ??= this.#read();
    const { agreed } = await this.#agreement;
    const kept =
      (await this.#kept(pathname, agreed)) ??
      (request.mode === 'navigate' ? await this.#kept('/', agreed) : undefined);
    return kept ?? this.#fetch(request);
  }

  /**
   * A kept file: of any version when its name says what it is; else of the agreed one,
   * or of this worker's where the browser dropped it.
   *
   * @param {string} path
   * @param {string | undefined} agreed
   */
  async #kept(path, agreed = this.#own) {
    if (path === listEntry) return undefined;
    const found = await this.#of(agreed, path);
    if (found) return found;
    return namedByContent(path) ? this.#anywhere(path) : this.#of(this.#own, path);
  }

  /** @param {string} path */
  async #anywhere(path) {
    for (const version of versionsIn(await this.#caches.keys()).reverse()) {
      const found = await this.#of(version, path);
      if (found) return found;
    }
    return undefined;
  }

  /**
   * A version's file without making it a cache, when it has none.
   *
   * @param {string} version
   * @param {string} path
   */
  async #of(version, path) {
    const name = cacheName(version);
    if (!(await this.#caches.has(name))) return undefined;
    return (await this.#caches.open(name)).match(path, { ignoreVary: true });
  }

  /**
   * Whether a version can be served: its page is here, or what to fetch anew is known.
   *
   * @param {string} version
   */
  async #stands(version) {
    return Boolean((await this.#of(version, '/')) ?? (await this.#of(version, listEntry)));
  }

  /**
   * Which files of a version are not here, with their sums, and how many it has.
   *
   * @param {string} version
   */
  async #missing(version) {
    const files = await this.#filesOf(version);
    const there = await Promise.all(
      [...files.keys()].map(
        async (path) =>
          (await this.#of(version, path)) ?? (namedByContent(path) && (await this.#anywhere(path))),
      ),
    );
    return { missing: [...files].filter((_, n) => !there[n]), want: files.size };
  }

  /**
   * @param {string} version
   * @returns {Promise<Files>}
   */
  async #filesOf(version) {
    if (version === this.#own) return this.#files;
    const list = await this.#of(version, listEntry);
    return new Map(list ? await list.json() : []);
  }

  /**
   * A file whose bytes have this sum: from another version that has it, else from the
   * network, once more where a connection broke, and past a copy on the way that was
   * spoilt. Rejects when there is none.
   *
   * @param {string} path
   * @param {string} sum
   */
  async #checked(path, sum) {
    const here = namedByContent(path) ? await this.#anywhere(path) : undefined;
    if (here && (await sumOf(here.clone())) === sum) return here;
    let broken = new Error(`${path}: other bytes`);
    for (const cache of /** @type {const} */ (['no-cache', 'reload'])) {
      const response = await this.#fetch(path, { cache, credentials: 'same-origin' }).catch(
        (error) => void (broken = error),
      );
      if (!response) continue;
      if (response.status !== 200) throw new Error(`${path}: ${response.status}`);
      if ((await sumOf(response.clone())) !== sum) continue;
      // A page may not be opened with what was found by way of another address.
      return response.redirected ? new Response(response.body, response) : response;
    }
    throw broken;
  }

  /** @returns {Promise<Agreement>} */
  async #read() {
    const here = await this.#caches.has(agreementName);
    const cache = here ? await this.#caches.open(agreementName) : undefined;
    const entry = await cache?.match(agreementEntry);
    const agreement = entry ? await entry.json().catch(() => ({})) : {};
    this.#agreement = Promise.resolve(agreement);
    return agreement;
  }
}

/**
 * The SHA-256 of what a response holds, in hex.
 *
 * @param {Response} response
 */
async function sumOf(response) {
  const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
