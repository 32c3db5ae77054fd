import { scriptURL } from '../site/trusted.js';

const takeOverDeadline = 4000; // ms until a plain reload, if no new worker takes over

/**
 * Asks a service worker for its version.
 *
 * @param {ServiceWorker} worker
 * @returns {Promise<string>}
 */
function versionOf(worker) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage({ type: 'version' }, [port2]);
  });
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
  #asked = false;
  #reloaded = false;
  /** @type {Set<(state: State) => void>} */
  #subscribers = new Set();

  /**
   * supported: the browser has service workers, and the page may use them
   * ready: all files are kept; the page works without a network
   * waiting: a new version is kept and waits to take over
   * version, built: of this page; built is YYYY-MM-DD
   * updatedElsewhere: another tab changed the version; this tab needs a reload
   *
   * @typedef {{ supported: boolean, ready: boolean, waiting: boolean, updatedElsewhere: boolean,
   *   version: string, built: string }} State
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
      ready: false,
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
    container.addEventListener('controllerchange', () => this.#controllerChanged(container));
    const registration = await this.#register(container);
    if (!registration) return this.#set({ supported: false });
    this.#registration = registration;
    registration.addEventListener('updatefound', () => this.#follow(registration));
    this.#page.addEventListener('visibilitychange', () => {
      if (this.#page.visibilityState === 'visible') this.check();
    });
    this.#follow(registration);
    this.#update(registration);
  }

  /**
   * Resolves to nothing where a browser has service workers and refuses them, as in a
   * private window.
   *
   * @param {ServiceWorkerContainer} container
   */
  async #register(container) {
    try {
      return await container.register(scriptURL('/sw.js'), { updateViaCache: 'none' });
    } catch {
      return undefined;
    }
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

  /** Lets the waiting version take over and reloads this tab, and only this one. */
  takeOver() {
    this.#asked = true;
    const waiting = this.#registration?.waiting;
    if (!waiting) return this.#reloadOnce();
    waiting.postMessage({ type: 'take-over' });
    setTimeout(() => this.#reloadOnce(), takeOverDeadline);
  }

  /** @param {Partial<State>} change */
  #set(change) {
    const state = { ...this.state, ...change };
    if (JSON.stringify(state) === JSON.stringify(this.state)) return;
    this.state = state;
    for (const fn of this.#subscribers) fn(this.state);
  }

  /** @param {ServiceWorkerRegistration} registration */
  #follow(registration) {
    const { installing, waiting } = registration;
    for (const worker of [installing, waiting]) {
      worker?.addEventListener('statechange', () => this.#update(registration));
    }
  }

  /** @param {ServiceWorkerRegistration} registration */
  #update({ active, waiting }) {
    // The very first worker is "waiting" for a moment too; there is nothing to update then.
    this.#set({ ready: Boolean(active), waiting: Boolean(active && waiting) });
  }

  /** @param {ServiceWorkerContainer} container */
  async #controllerChanged({ controller }) {
    if (this.#asked) return this.#reloadOnce();
    if (controller && (await versionOf(controller)) !== this.state.version) {
      this.#set({ updatedElsewhere: true, waiting: false });
    }
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
