// What the app holds while a person uses it for long: every screen in its states and
// every act, over and over, on one page that is never loaded anew. The store gets back
// what lay in it after each round, so that only what is forgotten to be let go can grow.
import { goTo, stored } from '../browser/job-page.js';
import { launchChromium, startServer } from '../browser/launch.js';
import { phone as small } from '../browser/open-site.js';
import { untilState } from '../browser/page.js';
import { phones } from '../browser/phones.js';
import { phoneOf, screens } from '../browser/screens.js';
import { median } from '../median.js';
import { acts, Person } from './acts.js';
import { collected, madeIn, programsIn } from './heap.js';
import { Ledger } from './ledger.js';
import { toLetGo } from './let-go.js';

// The code that the browser makes of what runs often would be counted as memory of the page.
const withoutMachineCode = '--js-flags=--no-sparkplug --no-maglev --no-turbofan';

const used = 'in use'; // the phone of most states
const worked = 'begin done reading done note photo undo done photo restore'.split(' ');
const restoredJobs = 20;

// What a state's way finds only once on a page: a tick that the next tap takes away.
const once = ['places to touch, one ticked'];

const states = Object.values(screens).flatMap((of) =>
  Object.entries(of).filter(([name, way]) => phoneOf(way) === used && !once.includes(name)),
);

/** What may grow by so much while a phone is used: more is forgotten to be let go. */
const most = 1.1;

/** Runs in the page, before it: counts what has to be let go by name. */
function counted() {
  const held = (globalThis.held = { urls: new Set(), intervals: new Set() });
  const { createObjectURL, revokeObjectURL } = URL;
  URL.createObjectURL = (of) => {
    const url = createObjectURL(of);
    held.urls.add(url);
    return url;
  };
  URL.revokeObjectURL = (url) => (held.urls.delete(url), revokeObjectURL(url));
  const { setInterval: begin, clearInterval: end } = globalThis;
  globalThis.setInterval = (...all) => {
    const id = begin(...all);
    held.intervals.add(id);
    return id;
  };
  globalThis.clearInterval = (id) => (held.intervals.delete(id), end(id));
}

/** Runs in the page: all that lies in the store, or puts it there in place of what does. */
const store = (all) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const db = opening.result;
      const names = [...db.objectStoreNames];
      const tx = db.transaction(names, all ? 'readwrite' : 'readonly');
      const found = {};
      for (const name of names) {
        const list = tx.objectStore(name);
        if (all) {
          list.clear();
          for (const [key, value] of all[name]) list.put(value, list.keyPath ? undefined : key);
        } else {
          const [keys, values] = [list.getAllKeys(), list.getAll()];
          values.onsuccess = () =>
            (found[name] = keys.result.map((key, n) => [key, values.result[n]]));
        }
      }
      tx.oncomplete = () => (db.close(), resolve(found));
      tx.onabort = () => reject(tx.error);
    };
  });

/** A phone that is used for long. */
export class LongUse {
  #t;
  #chance;
  #before; // what lay in the store
  #states;
  #jobs;
  #letGo; // what the driver of the browser holds on to in the page
  page;

  /**
   * Starts server and browser; both end with `t`. A round has one state of `each`, and
   * so many jobs.
   */
  static async begin(t, chance, { each = 1, jobs = 6 } = {}) {
    const use = new LongUse();
    use.#t = t;
    use.#chance = chance;
    use.#states = states.filter((_, n) => n % each === 0);
    use.#jobs = jobs;
    const server = await startServer(t);
    const browser = await launchChromium(undefined, [withoutMachineCode]);
    const child = browser.process();
    t.after(() => child.kill());
    const page = (use.page = await browser.newPage());
    await page.setViewport(small);
    await page.evaluateOnNewDocument(counted);
    for (const fn of phones[used].before ?? []) await page.evaluateOnNewDocument(fn);
    await page.goto(server.url);
    await untilState(page, 'ready');
    await phones[used].fill(page);
    await page.reload();
    await page.waitForSelector('h1');
    use.#before = await page.evaluate(store);
    use.#letGo = toLetGo(page);
    return use;
  }

  /**
   * One round in an order that chance decides: the states, and jobs that are begun,
   * worked at and restored beside others. Resolves to how many acts that were.
   */
  async round() {
    const { page } = this;
    const ledger = new Ledger();
    const person = new Person(this.#t, { page }, ledger, this.#chance, restoredJobs);
    const todo = [
      ...this.#states.map(([name, way]) => [name, () => way(page)]),
      ...Array.from({ length: this.#jobs }, () => ['work', () => work(person)]),
    ];
    const count = this.#states.length + this.#jobs * worked.length;
    while (todo.length) {
      const [[name, act]] = todo.splice(this.#chance.below(todo.length), 1);
      try {
        await act();
      } catch (error) {
        throw new Error(`${name}: ${error.message}`, { cause: error });
      }
    }
    await goTo(page, '#/bikes');
    await page.evaluate(store, this.#before);
    await goTo(page, '#/record'); // which nobody has told of it
    await goTo(page, '#/bikes');
    await this.#letGo();
    return count;
  }

  /**
   * What is held now, once all that nobody can reach was collected: in bytes `page` (its
   * heap), `made` (of that, what its program made), `drawn` (what its elements need),
   * `worker` and `core` (the memory of its program); in numbers `nodes`, `listeners`,
   * `cached` (answers that are kept), `urls`, `intervals`, `records`.
   */
  async held() {
    const { page } = this;
    const devtools = await page.createCDPSession();
    const [thread] = page.workers();
    const { usedSize: pageHeap, embedderHeapUsedSize: drawn } = await collected(devtools);
    const { usedSize: worker } = await collected(thread.client);
    const { nodes, jsEventListeners: listeners } = await devtools.send('Memory.getDOMCounters');
    const { urls, intervals } = await page.evaluate(() => ({
      urls: globalThis.held.urls.size,
      intervals: globalThis.held.intervals.size,
    }));
    const all = await Promise.all(Object.keys(this.#before).map((name) => stored(page, name)));
    const cached = await page.evaluate(async () => {
      const names = await caches.keys();
      const each = names.map(async (name) => (await (await caches.open(name)).keys()).length);
      return (await Promise.all(each)).reduce((sum, n) => sum + n, 0);
    });
    const core = await programsIn(thread.client);
    const made = await madeIn(devtools);
    await devtools.detach();
    return {
      page: pageHeap,
      made,
      drawn,
      worker,
      core,
      nodes,
      listeners,
      cached,
      urls,
      intervals,
      records: all.flat().length,
    };
  }
}

/** A job from its beginning, which takes up to where the list ends. */
async function work(person) {
  person.job = null;
  for (const name of worked) await acts[name](person);
}

/**
 * What is measured in whole steps: up to one step of it is held by nobody. The memory of a
 * program grows by what Go asks the browser for at once, 1 MiB (measured: 16 pages), so
 * that a tenth of it may be less than a step.
 */
const steps = { core: 2 ** 20 };

/**
 * What surely grew from some samples of what was held to others, by their medians: sentences.
 * Of what is measured in steps the least that it may be is held against the most.
 */
export const grown = (first, last) =>
  Object.keys(first[0])
    .filter((name) => name !== 'drawn') // swept when the browser likes; nodes and listeners stand for it
    .map((name) => {
      const [before, after] = [first, last].map((list) => median(list.map((held) => held[name])));
      const least = after - (steps[name] ?? 0);
      return least > before * most ? `${name} grew from ${before} to ${after}` : '';
    })
    .filter(Boolean);
