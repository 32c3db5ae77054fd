import { scriptURL } from '../site/trusted.js';

// What a worker is asked is lost with one that is ended meanwhile: it is asked again.
const answerDeadline = 5000; // ms
const longestWait = 32 * answerDeadline; // each time twice as long; what is late counts too
const questions = 4; // at most; if no new worker takes over then, a plain reload

/**
 * How a worker stands: its own version, the one that it serves, and how many files of
 * that one are here, of how many.
 *
 * @typedef {{ newest: string, served: string, have: number, want: number }} Standing
 */

/**
 * Asks a service worker how it stands; it tells once more when it could fetch what was
 * missing. One of an earlier version never answers.
 *
 * @param {ServiceWorker} worker
 * @param {(standing: Standing) => void} tell
 */
function ask(worker, tell) {
  const { port1, port2 } = new MessageChannel();
  let told = 0;
  port1.onmessage = ({ data }) => {
    if (++told === 2 || data.have === data.want) port1.close();
    tell(data);
  };
  worker.postMessage({ type: 'standing' }, [port2]);
}

/** @param {ServiceWorkerRegistration} registration */
const isGone = ({ installing, waiting, active }) => !(installing ?? waiting ?? active);

/**
 * Has fn called at each change of a worker.
 *
 * @param {ServiceWorkerRegistration} registration
 * @param {() => void} fn
 */
function follow({ installing, waiting, active }, fn) {
  for (const worker of [installing, waiting, active]) worker?.addEventListener('statechange', fn);
}

/**
 * Knows how the page stands with its service worker. It never reloads the page
 * by itself: the page offers an update when it suits (state.waiting, and never
 * during a job) and calls takeOver() when the person agrees.
 */
export class Offline {
  #page;
  #container;
  #reload;
  /** @type {ServiceWorkerRegistration | null} */
  #registration = null;
  /** @type {Standing | null} */
  #standing = null;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #again;
  #asked = false;
  #reloaded = false;
  /** @type {Set<(state: State) => void>} */
  #subscribers = new Set();

  /**
   * supported: the browser has service workers, and the page may use them
   * insecure: the page came over plain HTTP from another machine, where a browser keeps no app
   * ready: all files were counted and are kept; the page works without a network
   * have, want: how many files are kept, of how many; 0 of 0 while that is not known
   * waiting: a new version is kept and waits for the person to agree
   * version, built: of this page; built is YYYY-MM-DD
   * updatedElsewhere: another window agreed to another version; this one goes on with its own
   *
   * @typedef {{ supported: boolean, insecure: boolean, ready: boolean, have: number, want: number,
   *   waiting: boolean, updatedElsewhere: boolean, version: string, built: string }} State
   * @type {State}
   */
  state;

  /**
   * `page` is the document, `container` is navigator.serviceWorker or undefined.
   *
   * @param {Document} page
   * @param {ServiceWorkerContainer | undefined} container
   * @param {() => void} reload
   */
  constructor(page, container, reload) {
    /** @param {string} name */
    const meta = (name) =>
      /** @type {HTMLMetaElement | null} */ (page?.querySelector(`meta[name="${name}"]`))
        ?.content ?? '';
    this.#page = page;
    this.#container = container;
    this.#reload = reload;
    this.state = {
      supported: Boolean(container),
      insecure: globalThis.isSecureContext === false,
      ready: false,
      have: 0,
      want: 0,
      waiting: false,
      updatedElsewhere: false,
      version: meta('version'),
      built: meta('built'),
    };
  }

  /** Registers the service worker and begins to watch it. */
  async start() {
    const container = this.#container;
    if (!container) return;
    const settled = () => this.#count(container.controller);
    container.addEventListener('controllerchange', () =>
      this.#asked ? this.#reloadOnce() : settled(),
    );
    container.addEventListener('message', ({ data }) => data?.type === 'agreed' && settled());
    const again = () => {
      if (!this.#registration || this.state.ready) return;
      if (isGone(this.#registration)) this.#register(container);
      else this.#count(this.#registration.active);
    };
    this.#page.defaultView?.addEventListener('online', again);
    this.#page.addEventListener('visibilitychange', () => {
      if (this.#page.visibilityState !== 'visible') return;
      this.check();
      again();
    });
    await this.#register(container);
  }

  /**
   * Registers the worker, and once more, after twice as long each time, where its first
   * install breaks off, as it does with the network: browsers leave nothing of it. Some
   * browsers have service workers and refuse them, as in a private window.
   *
   * @param {ServiceWorkerContainer} container
   * @param {number} [wait] ms until it is tried again
   */
  async #register(container, wait = answerDeadline) {
    try {
      this.#registration = await container.register(scriptURL('/sw.js'), {
        updateViaCache: 'none',
      });
    } catch {
      if (!this.#registration) return this.#set({ supported: false });
    }
    const registration = this.#registration;
    const look = () => {
      clearTimeout(this.#again);
      if (!isGone(registration)) return this.#update(registration);
      this.#again = setTimeout(
        () => this.#register(container, Math.min(2 * wait, longestWait)),
        wait,
      );
    };
    registration.addEventListener('updatefound', () => follow(registration, look));
    follow(registration, look);
    look();
  }

  /** Looks for a new version; done by itself each time the page becomes visible. */
  async check() {
    try {
      await this.#registration?.update();
    } catch {
      // No network: there is nothing to look at.
    }
  }

  /**
   * Calls fn with the state now and at each change; returns a function that ends it.
   *
   * @param {(state: State) => void} fn
   */
  subscribe(fn) {
    this.#subscribers.add(fn);
    fn(this.state);
    return () => this.#subscribers.delete(fn);
  }

  /** Lets the newest version take over and reloads this tab, and only this one; `left` is how often it may be asked. */
  takeOver(left = questions) {
    this.#asked = true;
    const { waiting, active } = this.#registration ?? {};
    const newest = waiting ?? (this.state.waiting ? active : null);
    if (!newest || !left) return this.#reloadOnce();
    newest.postMessage({ type: 'take-over' });
    setTimeout(() => this.#reloaded || this.takeOver(left - 1), answerDeadline);
  }

  /** @param {Partial<State>} change */
  #set(change) {
    const state = { ...this.state, ...change };
    if (JSON.stringify(state) === JSON.stringify(this.state)) return;
    this.state = state;
    for (const fn of this.#subscribers) fn(this.state);
  }

  /** @param {ServiceWorkerRegistration} registration */
  #update({ active }) {
    // What controls the page serves it, though WebKit 2.38 (iOS 16.0) may go on calling it
    // "activating" in a page that came with it.
    const own = this.#container?.controller;
    const serves = own ?? (active?.state === 'activated' ? active : null);
    if (serves && !this.#standing) this.#count(serves);
    this.#stand();
  }

  /**
   * Has a worker count what is kept.
   *
   * @param {ServiceWorker | null} worker
   * @param {number} [wait] ms until it is asked again
   */
  #count(worker, wait = answerDeadline) {
    if (!worker || wait > longestWait) return;
    ask(worker, (standing) => {
      clearTimeout(again);
      this.#standing = standing;
      if (this.#asked && standing.served !== this.state.version) return this.#reloadOnce();
      this.#stand();
    });
    const again = setTimeout(() => this.#count(worker, 2 * wait), wait);
  }

  /** What the page says of itself follows from what its worker told, and from the one that waits. */
  #stand() {
    const { active, waiting } = this.#registration ?? {};
    const { newest, served, have, want } = this.#standing ?? { have: 0, want: 0 };
    const { version } = this.state;
    this.#set({
      ready: want > 0 && have === want,
      have,
      want,
      // The very first worker is "waiting" for a moment too; there is nothing to update then.
      waiting: Boolean((active && waiting) || newest !== served),
      updatedElsewhere: served !== undefined && ![served, newest].includes(version),
    });
  }

  #reloadOnce() {
    if (this.#reloaded) return;
    this.#reloaded = true;
    this.#reload();
  }
}

/** The page's one store; `offline.start()` is for the page to call, once. */
export const offline = new Offline(globalThis.document, globalThis.navigator?.serviceWorker, () =>
  location.reload(),
);
