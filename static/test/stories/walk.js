// Walks to the screens as the browser tests do, and keeps of each what a person needs
// to look at it: pictures of every appearance, and what opens it live.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { untilState } from '../browser/page.js';
import { patience } from '../browser/patience.js';
import { phones } from '../browser/phones.js';
import { phoneOf } from '../browser/screens.js';
import { appear, appearances, sizes } from './appearances.js';
import { copyStore, pasteStore } from './store-copy.js';

const tallest = 12_000; // CSS px of a picture; more is more than browsers draw
const settling = patience(); // ms until a live story should show what the walk came to

/** Walks in one browser on the host at that URL, and writes into a folder. */
export class Walker {
  #browser;
  #url;
  #folder;
  #visitor; // the page in which stories are opened live
  #phones = new Map(); // name -> {page, first}: `first` lies in its store before each walk

  constructor(browser, url, folder) {
    this.#browser = browser;
    this.#url = url;
    this.#folder = folder;
  }

  /** Walks one way; resolves to the story of it, and writes the rest into a folder of its own. */
  async walk(name, way) {
    const phone = phoneOf(way);
    const { page, first } = await this.#phone(phone);
    await page.bringToFront();
    await page.setViewport(sizes.phone);
    await this.#begin(page, phone, first);
    await way(page);
    const taken = await page.evaluate(() => globalThis.story.taken());
    const id = name.toLowerCase().replace(/[^a-z0-9]+/g, '-');
    const folder = join(this.#folder, id);
    await mkdir(folder, { recursive: true });
    const pictures = await this.#pictures(page, folder);
    const { heading, shown } = await page.evaluate(seen); // as it has settled
    const store = first && (await page.evaluate(copyStore, first.name));
    await writeFile(join(folder, 'story.json'), JSON.stringify({ phone, ...taken, store }));
    const [, screen] = taken.address.split('/');
    const came = await this.#live(id, shown);
    const other = came === shown ? {} : { shown, came };
    return { id, name, phone, screen, heading, pictures, live: came === shown, ...other };
  }

  /** The page of a phone, and what lay in its store at first. */
  async #phone(name) {
    if (!this.#phones.has(name)) {
      const page = await this.#newPage();
      await this.#open(page, name);
      await phones[name].fill?.(page);
      const empty = await page.evaluate(() => !globalThis.indexedDB);
      const first = empty ? null : await page.evaluate(copyStore, 'tidysump');
      this.#phones.set(name, { page, first });
    }
    return this.#phones.get(name);
  }

  /** A page with a store of its own, as large as a phone's. */
  async #newPage() {
    const page = await (await this.#browser.createBrowserContext()).newPage();
    await page.bringToFront(); // a tab in the background draws nothing
    await page.setViewport(sizes.phone);
    return page;
  }

  async #open(page, phone) {
    await page.goto(`${this.#url}?phone=${encodeURIComponent(phone)}`);
    await page.waitForSelector('h1');
    await untilState(page, 'ready');
  }

  /** Opens the site on a phone, with what lay in its store at first. */
  async #begin(page, phone, first) {
    await page.goto(`${this.#url}stories/blank.html`); // nothing there holds the store
    if (first) await page.evaluate(pasteStore, first);
    await this.#open(page, phone);
    await appear(page, 'light');
  }

  /** Takes all pictures: what is seen first, and, of a phone, the whole where it is longer. */
  async #pictures(page, folder) {
    const pictures = {};
    const take = (file) => page.screenshot({ path: join(folder, file), optimizeForSpeed: true });
    for (const [size, viewport] of Object.entries(sizes)) {
      await page.setViewport(viewport);
      for (const name of Object.keys(appearances)) {
        await appear(page, name);
        await page.evaluate(() => scrollTo(0, 0));
        const first = `${name}-${size}.png`;
        await take(first);
        pictures[first] = first;
        const height = await page.evaluate(() => document.documentElement.scrollHeight);
        if (size !== 'phone' || height <= viewport.height) continue;
        pictures[first] = `${name}-${size}-whole.png`;
        await page.setViewport({ ...viewport, height: Math.min(height, tallest) });
        await take(pictures[first]);
        await page.setViewport(viewport);
      }
    }
    await page.setViewport(sizes.phone);
    await appear(page, 'light');
    return pictures;
  }

  /** Opens a story live, as a person would; resolves to what it came to, `want` as soon as it is there. */
  async #live(id, want) {
    const page = (this.#visitor ??= await this.#newPage());
    await page.bringToFront();
    await page.goto(`${this.#url}stories/open.html?story=${id}`);
    let came;
    for (const end = Date.now() + settling; Date.now() < end; await pause(100)) {
      ({ shown: came } = await page.evaluate(seen).catch(() => ({}))); // it is on its way
      if (came === want) break;
    }
    return came;
  }
}

/** Runs in the page: the heading, and all that is shown, without figures: clocks go on. */
function seen() {
  const plain = (text = '') => text.replace(/\s+/g, ' ').trim();
  return {
    heading: plain(document.querySelector('h1')?.innerText),
    shown: plain(document.body.innerText).replace(/\d+/g, ''),
  };
}
