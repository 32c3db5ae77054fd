// Work that takes long is done in slices: between them the screen moves, and taps count.

const slice = 12; // ms of work at a time, well below what a person feels

/** Lets the screen move, as soon as it may. */
const rest = () =>
  /** @type {any} */ (globalThis).scheduler?.yield
    ? /** @type {any} */ (globalThis).scheduler.yield()
    : new Promise((resolve) => setTimeout(resolve));

/** The pace of long work, which somebody may stop. */
export class Pace {
  #since = performance.now();
  #signal;

  /** @param {AbortSignal} [signal] stops the work, by a rejection */
  constructor(signal) {
    this.#signal = signal;
  }

  /** Whether this slice has taken long enough: then wait for rest() before the next piece of work. */
  get due() {
    return performance.now() - this.#since >= slice;
  }

  /** Rests, if it is time to; rejects when the work is to stop. */
  async breathe() {
    this.#signal?.throwIfAborted();
    if (!this.due) return;
    await rest();
    this.#since = performance.now();
    this.#signal?.throwIfAborted();
  }
}
