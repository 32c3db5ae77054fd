// An engine that puppeteer speaks with.
import { patience } from '../browser/patience.js';
import { Engine } from './engine.js';
import { endWithThis } from './groups.js';

/** An engine behind a browser of puppeteer. */
export class PuppeteerEngine extends Engine {
  can = new Set(['file', 'windows', 'download', 'reopen', 'drag']);
  complaints = [];
  #pages = [];
  #page;
  #size;
  #kill;

  constructor(name, browser, { downloads, size }) {
    super();
    this.name = name;
    this.browser = browser;
    this.#kill = endWithThis(browser.process());
    this.downloads = downloads;
    this.#size = size;
  }

  async load(url) {
    await this.#page.goto(url, { timeout: patience(60) });
  }

  ask(fn, args) {
    return this.#page.evaluate(fn, ...args);
  }

  async touch([first, ...further]) {
    const { mouse } = this.#page;
    await mouse.move(first.x, first.y);
    await mouse.down();
    for (const { x, y } of further) await mouse.move(x, y);
    await mouse.up();
  }

  async strike(keys) {
    for (const key of keys)
      if ([...key].length > 1) await this.#page.keyboard.press(key);
      else await this.#page.keyboard.type(key);
  }

  async giveFile(selector, path) {
    const input = await this.#page.$(selector);
    await input.uploadFile(path);
  }

  async openWindow(url) {
    this.#page = await this.browser.newPage();
    this.#pages.push(this.#page);
    await this.#page.setViewport(this.#size);
    await this.watch(this.#page);
    if (url) await this.load(url);
  }

  async show(number) {
    this.#page = this.#pages[number];
    await this.#page.bringToFront();
  }

  picture() {
    return this.#page.screenshot();
  }

  async heard() {
    return [...this.complaints];
  }

  async end() {
    await this.browser.close().catch(() => {}); // one that does not answer is ended all the same
    await this.kill();
  }

  /** Ends it as an empty battery would. */
  async kill() {
    await this.#kill();
  }
}
