// What the app holds while a person uses it for long: every screen in its states and
// every act, over and over, on one page that is never loaded anew. The store gets back
// what lay in it after each round, so that only what is forgotten to be let go can grow.
import puppeteer from 'puppeteer-core';
import { goTo, stored } from '../browser/job-page.js';
import { launchChromium, startServer } from '../browser/launch.js';
import { phone as small } from '../browser/open-site.js';
import { untilState } from '../browser/page.js';
import { patience } from '../browser/patience.js';
import { phones } from '../browser/phones.js';
import { phoneOf, screens } from '../browser/screens.js';
import { median } from '../median.js';
import { acts, Person } from './acts.js';
import { Ledger } from './ledger.js';

// The code that the browser makes of what runs often would be counted as memory of the page.
const withoutMachineCode = '--js-flags=--no-sparkplug --no-maglev --no-turbofan';

const used = 'in use'; // the phone of most states
const worked = 'begin done reading done note photo undo done photo restore'.split(' ');
const restoredJobs = 20;
const collections = 3; // what one finalizes is free only after the next

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
  #address; // of the browser's debugger
  #before; // what lay in the store
  #states;
  #jobs;
  #browser;
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
    use.#address = browser.wsEndpoint();
    const page = await browser.newPage();
    await page.setViewport(small);
    await page.evaluateOnNewDocument(counted);
    for (const fn of phones[used].before ?? []) await page.evaluateOnNewDocument(fn);
    await page.goto(server.url);
    await untilState(page, 'ready');
    await phones[used].fill(page);
    await page.reload();
    await page.waitForSelector('h1');
    use.#before = await page.evaluate(store);
    await browser.disconnect();
    return use;
  }

  /**
   * One round in an order that chance decides: the states, and jobs that are begun,
   * worked at and restored beside others. Resolves to how many acts that were.
   */
  async round() {
    const page = await this.#connect();
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
    await this.#browser.disconnect();
    return count;
  }

  /**
   * What is held now, once all that nobody can reach was collected: in bytes `page` (its
   * own objects), `drawn` (what its elements need), `worker`, `core` (the memory of its
   * program) and `caches`; in numbers `nodes`, `listeners`, `urls`, `intervals`, `records`.
   */
  async held() {
    const page = await this.#connect();
    const devtools = await page.createCDPSession();
    const [thread] = page.workers();
    const { usedSize: pageHeap, embedderHeapUsedSize: drawn } = await heap(devtools);
    const { usedSize: worker } = await heap(thread.client);
    const { nodes, jsEventListeners: listeners } = await devtools.send('Memory.getDOMCounters');
    const { urls, intervals } = await page.evaluate(() => ({
      urls: globalThis.held.urls.size,
      intervals: globalThis.held.intervals.size,
    }));
    const all = await Promise.all(Object.keys(this.#before).map((name) => stored(page, name)));
    const caches = await page.evaluate(() =>
      navigator.storage.estimate().then(({ usageDetails }) => usageDetails?.caches ?? 0),
    );
    const core = await memoryOf(thread.client);
    await this.#browser.disconnect();
    return {
      page: pageHeap,
      drawn,
      worker,
      core,
      caches,
      nodes,
      listeners,
      urls,
      intervals,
      records: all.flat().length,
    };
  }

  /** The page, by a connection of its own: what the one before held on to is let go. */
  async #connect() {
    this.#browser = await puppeteer.connect({
      browserWSEndpoint: this.#address,
      defaultViewport: small,
      protocolTimeout: patience(180),
    });
    const pages = await this.#browser.pages();
    const page = pages.find((one) => one.url().startsWith('http'));
    page.setDefaultTimeout(patience());
    await page.bringToFront();
    return page;
  }
}

/** A job from its beginning, which takes up to where the list ends. */
async function work(person) {
  person.job = null;
  for (const name of worked) await acts[name](person);
}

/** Collects all that nobody can reach; resolves to what is left. */
async function heap(devtools) {
  for (let n = 0; n < collections; n++) await devtools.send('HeapProfiler.collectGarbage');
  return devtools.send('Runtime.getHeapUsage');
}

/** Bytes of the memories of all programs that the worker holds. */
async function memoryOf(devtools) {
  const evaluate = (expression) => devtools.send('Runtime.evaluate', { expression });
  const { result } = await evaluate('WebAssembly.Memory.prototype');
  const { objects } = await devtools.send('Runtime.queryObjects', {
    prototypeObjectId: result.objectId,
  });
  const sum = await devtools.send('Runtime.callFunctionOn', {
    objectId: objects.objectId,
    functionDeclaration:
      'function () { return this.reduce((sum, { buffer }) => sum + buffer.byteLength, 0); }',
    returnByValue: true,
  });
  return sum.result.value;
}

/** What grew from some samples of what was held to others, by their medians: sentences. */
export const grown = (first, last) =>
  Object.keys(first[0])
    .filter((name) => name !== 'drawn') // swept when the browser likes; nodes and listeners stand for it
    .map((name) => {
      const [before, after] = [first, last].map((list) => median(list.map((held) => held[name])));
      return after > before * most ? `${name} grew from ${before} to ${after}` : '';
    })
    .filter(Boolean);
