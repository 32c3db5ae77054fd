import { readAnswer, unavailable } from './answer.js';
import { afterFirstPaint, startCore } from './start.js';

/** @import { Answer, Ops } from './core.d.ts' */
/** @import { CoreWorker, Said } from './remote.js' */

/**
 * @typedef {'starting' | 'ready' | 'restarting' | 'failed'} State
 * @typedef {object} Call
 * @property {number} [id] once it is under way
 * @property {string} op
 * @property {string} input JSON
 * @property {(answer: Answer<any>) => void} resolve
 * @property {number} crashes that it was blamed for
 */

// ms; the first start loads the core over the network, and a call that takes less than a
// second here takes long in an old browser of a phone that is busy: to stop it is no help.
const deadline = 60_000;

/**
 * Calls the core in its worker, one call at a time, so that a crash is known to
 * belong to the call under way. A crash is: an answer of the wrong shape, an
 * exited program, an error of the worker, or no answer in time. Then the worker
 * is started anew and the call is tried once more.
 */
export class CoreClient {
  #startWorker;
  #soon;
  /** @type {CoreWorker | null} */
  #worker = null;
  #ready = false;
  #launching = false;
  #failedStarts = 0;
  /** @type {Call[]} */
  #queue = [];
  /** @type {Call | null} */
  #current = null;
  #nextId = 1;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;
  /** @type {Set<(state: State) => void>} */
  #listeners = new Set();

  /** @type {State} */
  state = 'starting';

  /**
   * `startWorker` makes a worker; `soon` delays the first start.
   *
   * @param {() => CoreWorker} startWorker
   * @param {(fn: () => void) => void} [soon]
   */
  constructor(startWorker, soon = (/** @type {() => void} */ fn) => fn()) {
    this.#startWorker = startWorker;
    this.#soon = soon;
  }

  /**
   * Asks the core; resolves to {ok} or {findings}, and never rejects. A string is
   * handed on as it is: JSON text that nobody has read yet.
   *
   * @param {string} op
   * @param {unknown} [input]
   * @returns {Promise<Answer<any>>}
   */
  call(op, input = {}) {
    const json = typeof input === 'string' ? input : JSON.stringify(input);
    return new Promise((resolve) => {
      this.#queue.push({ op, input: json, resolve, crashes: 0 });
      this.#pump();
    });
  }

  /** Starts the worker before the first call needs it. */
  start() {
    if (this.#worker || this.#launching) return;
    this.#launching = true;
    this.#soon(() => this.#launch());
  }

  /**
   * Calls fn with the state now and at each change; returns a function that ends it.
   *
   * @param {(state: State) => void} fn
   */
  onState(fn) {
    this.#listeners.add(fn);
    fn(this.state);
    return () => this.#listeners.delete(fn);
  }

  /** @param {State} state */
  #set(state) {
    if (state === this.state) return;
    this.state = state;
    for (const fn of this.#listeners) fn(state);
  }

  #launch() {
    this.#soon = (/** @type {() => void} */ fn) => fn();
    this.#launching = false;
    /** @type {CoreWorker} */
    let worker;
    try {
      worker = this.#startWorker();
    } catch {
      return this.#crash();
    }
    this.#worker = worker;
    /** @type {(fn: (event: any) => void) => (event: any) => void} */
    const ifMine = (fn) => (event) => worker === this.#worker && fn(event);
    worker.onmessage = ifMine(({ data }) => this.#receive(data));
    worker.onerror = worker.onmessageerror = ifMine(() => this.#crash());
    this.#arm();
  }

  #arm() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#crash(), deadline);
  }

  #pump() {
    if (!this.#worker) return this.start();
    if (!this.#ready || this.#current) return;
    const call = this.#queue.shift();
    if (!call) return;
    const { op, input } = call;
    const id = this.#nextId++;
    this.#current = { ...call, id };
    this.#arm();
    this.#worker.postMessage({ id, op, input });
  }

  /** @param {Said} [data] */
  #receive(data) {
    if (data?.ready) {
      clearTimeout(this.#timer);
      this.#ready = true;
      this.#failedStarts = 0;
      this.#set('ready');
      return this.#pump();
    }
    const answer = data?.id === this.#current?.id ? readAnswer(data?.output) : null;
    if (!this.#current || !answer) return this.#crash();
    clearTimeout(this.#timer);
    const { resolve } = this.#current;
    this.#current = null;
    resolve(answer);
    this.#pump();
  }

  #crash() {
    clearTimeout(this.#timer);
    const started = this.#ready;
    this.#worker?.terminate();
    this.#worker = null;
    this.#ready = false;
    if (this.#current) this.#blame(this.#current);
    else if (!started && ++this.#failedStarts === 2) return this.#giveUp();
    // A core that died idle is started by the next call: nobody waits for it.
    if (this.#queue.length === 0 && started) return this.#set('starting');
    this.#set('restarting');
    this.start();
  }

  /**
   * The call under way crashed the core: once more, or never again.
   *
   * @param {Call} call
   */
  #blame(call) {
    this.#current = null;
    if (++call.crashes < 2) this.#queue.unshift(call);
    else call.resolve(unavailable);
  }

  /** Two starts in a row failed: answer all that wait. The next call tries again. */
  #giveUp() {
    this.#failedStarts = 0;
    this.#set('failed');
    for (const { resolve } of this.#queue.splice(0)) resolve(unavailable);
  }
}

/** The page's one client. */
export const core = new CoreClient(startCore, afterFirstPaint);

/**
 * Asks the page's core: call('plan', {…}) resolves to {ok} or {findings}.
 *
 * @template {keyof Ops} Op
 * @param {Op} op
 * @param {Ops[Op]['in'] | string} [input] a string is JSON text that nobody has read yet
 * @returns {Promise<Answer<Ops[Op]['out']>>}
 */
export const call = (op, input) => core.call(op, input);
