// What a person does at a page, in any engine. Each engine's own file says how a page
// is loaded, asked and touched there.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { patience } from '../browser/patience.js';
import { boxOf, chooseEntry, fingerMet, focusField, place, textSeen } from './in-page.js';

const polling = 50; // ms
const samePlace = 10; // CSS pixels
const mostSeen = 1500; // letters of the screen in a message

/** An engine can't be had here; the message says why. */
export class NotHere extends Error {}

/**
 * An engine that runs. Those that extend it have `load`, `ask`, `touch`, `strike`,
 * `giveFile`, `show`, `openWindow`, `heard`, `end`, `kill`, and `picture`, which takes a
 * PNG of the page, for who looks for a fault.
 */
export class Engine {
  name = '';
  /** As the engine says it. */
  version = '';
  /** What the driver can do there: 'file', 'windows', 'download', 'reopen', 'drag'. */
  can = new Set();
  /** Where saved files arrive. */
  downloads = '';
  /** ms within which a second tap at the same place would be half of a double tap. */
  doubleTap = 0;
  #last = { x: 0, y: 0, at: -Infinity };

  windows = {
    /** Opens a further window of the same profile, and goes on in it. */
    open: (url) => this.openWindow(url),
    /** Goes on in the window with that number, 0 for the first. */
    switch: (number) => this.show(number),
  };

  /** Opens a page in the window; waits until it is loaded. */
  open(url) {
    return this.load(url);
  }

  /** Loads the page anew. */
  async reload() {
    await this.load(await this.evaluate(() => location.href));
  }

  /** Calls a function in the page, by its text, with arguments and an answer that are JSON. */
  evaluate(fn, ...args) {
    return this.ask(fn, args);
  }

  /** What stands on the screen. */
  seen() {
    return this.evaluate(textSeen);
  }

  /** Waits until the function, called in the page, gives something true; resolves to that. */
  until(fn, ...args) {
    const what = `${fn}(${args.map((arg) => JSON.stringify(arg)).join(', ')})`;
    return this.#untilTrue(
      () => this.evaluate(fn, ...args),
      () => `"${what}" does not come true`,
    );
  }

  /** Waits until a text, or something that fits a pattern, stands on the screen. */
  untilSeen(text) {
    const plain = typeof text === 'string';
    const source = (plain ? text : text.source).replace(/[\u2066-\u2069]/g, '');
    const fits = plain ? (all) => all.includes(source) : (all) => new RegExp(source).test(all);
    return this.#untilTrue(
      async () => fits(await this.seen()),
      () => `"${source}" does not appear`,
    );
  }

  /**
   * Taps what the selector or {role, name} means, once it can be hit; what was drawn anew
   * or moved meanwhile is looked for again, as a person would.
   */
  async tap(what) {
    await this.#untilTrue(
      () => this.#tapOnce(what),
      () => `${JSON.stringify(what)} is drawn anew or moves whenever it is tapped`,
    );
  }

  /** Reports whether the tap met what was meant. */
  async #tapOnce(what) {
    const where = await this.#placeOf(what);
    const { x, y, at } = this.#last;
    const again = Math.hypot(where.x - x, where.y - y) < samePlace;
    if (again) await pause(Math.max(0, at + this.doubleTap - performance.now()));
    await this.touch([where]);
    this.#last = { ...where, at: performance.now() };
    const end = performance.now() + patience(2);
    for (;;) {
      // A page that was left by the tap can't be asked.
      const met = await this.evaluate(fingerMet).catch(() => true);
      if (met !== undefined) return met;
      if (performance.now() > end) return false;
      await pause(polling);
    }
  }

  /** Types into the field whose label begins so, in place of what it holds. */
  async type(label, text) {
    await this.#untilTrue(
      () => this.evaluate(focusField, label),
      () => `no field "${label}" takes letters`,
    );
    await this.strike(text === '' ? ['Delete'] : [...text]);
  }

  /** Presses a key, such as 'ArrowUp' or 'Enter', where the focus is. */
  press(key) {
    return this.strike([key]);
  }

  /** Chooses an entry of a list, by the words of both. */
  async answer(label, entry) {
    await this.#untilTrue(
      () => this.evaluate(chooseEntry, label, entry),
      () => `no list "${label}" has "${entry}"`,
    );
  }

  /** Chooses a file of this machine in an input of the page. */
  async file(selector, path) {
    await this.until((s) => document.querySelector(s) !== null, selector);
    await this.giveFile(selector, path);
  }

  /** Drags from one place of a thing to another: {x, y} in fractions of its box, x is the middle if left out. */
  async drag(selector, from, to) {
    const box = await this.#untilTrue(
      () => this.evaluate(boxOf, selector),
      () => `there is no ${selector} to drag`,
    );
    const at = ({ x = 0.5, y }) => ({ x: box.left + box.width * x, y: box.top + box.height * y });
    const [a, b] = [at(from), at(to)];
    const steps = [0, 1 / 3, 2 / 3, 1];
    await this.touch(steps.map((s) => ({ x: a.x + (b.x - a.x) * s, y: a.y + (b.y - a.y) * s })));
    this.#last = { ...a, at: performance.now() };
  }

  /** Does what saves a file, and waits for it; resolves to {name, path}. */
  async download(act) {
    const before = new Set(await readdir(this.downloads));
    await act();
    const whole = (file) => !before.has(file) && !/\.(part|crdownload|wkdownload)$|^\./.test(file);
    const name = await this.#untilTrue(
      async () => {
        const files = await readdir(this.downloads);
        return files.some((file) => !before.has(file) && !whole(file)) ? '' : files.find(whole);
      },
      () => 'no file arrives',
    );
    return { name, path: join(this.downloads, name) };
  }

  /** What went wrong so far: errors on the console and of the page, loads that failed. */
  errors() {
    return this.heard();
  }

  /** Ends it; its profile stays. */
  close() {
    return this.end();
  }

  async #placeOf(what) {
    let last;
    return this.#untilTrue(
      async () => {
        const now = await this.evaluate(place, what);
        const still = last && last.x === now.x && last.y === now.y;
        last = now;
        return !now.lacks && still && now;
      },
      () => `${JSON.stringify(what)} can't be tapped: ${last?.lacks ?? 'it moves'}`,
    );
  }

  /** Polls; a page that is being left can't be asked, which counts as "not yet". */
  async #untilTrue(ask, complaint) {
    const end = performance.now() + patience();
    for (let trouble; ;) {
      try {
        const found = await ask();
        if (found) return found;
        trouble = undefined;
      } catch (error) {
        trouble = error;
      }
      if (performance.now() > end) throw new Error(await this.#told(complaint(), trouble));
      await pause(polling);
    }
  }

  async #told(complaint, trouble) {
    const seen = await this.seen().catch(({ message }) => `nothing that can be asked (${message})`);
    const errors = await this.errors().catch(() => []);
    return [
      `${this.name}: ${complaint}${trouble ? ` (${trouble.message})` : ''}`,
      `there is: ${seen.length > mostSeen ? `${seen.slice(0, mostSeen)} …` : seen}`,
      ...(errors.length ? [`errors: ${errors.join('; ')}`] : []),
    ].join('\n');
  }
}
