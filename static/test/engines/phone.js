// A phone of the walk: an engine with a profile of its own, and the host that it visits.
import { askCore, stateOf } from '../browser/page.js';
import { goTo } from '../browser/job-page.js';
import { startFolderHost } from '../browser/folder-host.js';
import { temporaryFolder } from '../browser/launch.js';
import { startEngine } from './driver.js';

/** What the readers of the browser tests ask of a page, of any engine. */
const asPage = (engine) => ({
  evaluate: (fn, ...args) => engine.evaluate(fn, ...args),
  waitForFunction: (fn, _, ...args) => engine.until(fn, ...args),
  waitForSelector: (selector) => engine.until((s) => document.querySelector(s) !== null, selector),
});

/** Whether the host can't be reached. */
const gone = (url) =>
  fetch(url).then(
    () => false,
    () => true,
  );

/** One phone; it ends with the test. */
export class Phone {
  #profile;
  #t;

  /** The engine that runs. */
  engine;
  /** The same, for the readers of the browser tests. */
  page;
  /** Serves the site, until it is stopped. */
  host;
  /** The folders of the editions, {now, next}. */
  editions;
  /** What the core answers natively: ask(operation, input). */
  ask;
  /** What one line of the walk leaves for later ones. */
  left = {};

  /** Starts the engine; rejects with NotHere where it can't be had. */
  static async open(t, name, { editions, ask }) {
    const phone = new Phone();
    phone.#t = t;
    phone.#profile = await temporaryFolder(t);
    Object.assign(phone, { editions, ask, host: await startFolderHost(t, editions.now) });
    await phone.#start(name);
    return phone;
  }

  async #start(name) {
    const engine = await startEngine(name, { profile: this.#profile });
    this.engine = engine;
    this.page = asPage(engine);
    this.#t.after(() => engine === this.engine && engine.close());
  }

  /** Ends the engine as an empty battery would, and starts it anew. */
  async dieAndComeBack() {
    const { name } = this.engine;
    await this.engine.kill();
    this.engine = undefined;
    await this.#start(name);
  }

  /** Goes to a screen by its address. */
  goTo(address) {
    return goTo(this.page, address);
  }

  /** Taps what has that name and role, or the innermost thing that holds it. */
  tap(name, role) {
    return this.engine.tap(role ? { role, name } : { name });
  }

  /** Waits until the page's offline state has `key` set. */
  async untilOffline(key) {
    try {
      await this.engine.until((k) => globalThis.tidysump?.offline.state[k], key);
    } catch (cause) {
      const state = await this.offline().catch(({ message }) => message);
      throw new Error(`${key} does not come of ${JSON.stringify(state)}: ${cause}`, { cause });
    }
  }

  /** How the page stands with its offline files. */
  offline() {
    return stateOf(this.page);
  }

  /** Loads the page anew, as its browser's button does; what it held in memory is gone. */
  async reload() {
    await this.engine.evaluate(() => {
      globalThis.beforeReload = true;
      setTimeout(() => location.reload());
    });
    await this.engine.until(() => !globalThis.beforeReload && document.readyState === 'complete');
  }

  /** Ends the host, so that nothing answers at its address. */
  async loseNetwork() {
    await this.host.stop();
    if (!(await gone(this.host.url))) throw new Error('The host still answers.');
  }

  /** Whether the core answers. */
  async computes() {
    return (await askCore(this.page)) === 'unknown-op';
  }
}
