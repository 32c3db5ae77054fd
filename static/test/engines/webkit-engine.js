// A WebKit, spoken with through its own WebDriver.
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { patience } from '../browser/patience.js';
import { Engine } from './engine.js';
import { startGroup } from './groups.js';
import { Session, freePort } from './webdriver.js';

/** Keys that are no letters, as WebDriver writes them. */
const keyCodes = {
  Backspace: '\ue003',
  Tab: '\ue004',
  Enter: '\ue007',
  Escape: '\ue00c',
  ArrowLeft: '\ue012',
  ArrowUp: '\ue013',
  ArrowRight: '\ue014',
  ArrowDown: '\ue015',
  Delete: '\ue017',
};

/** Calls the function, whose text it is, in the page, and says what came of it as JSON. */
const asked = (fn) => `
  const [args, done] = arguments;
  Promise.resolve()
    .then(() => (${fn})(...args))
    .then((value) => done(JSON.stringify({ value })))
    .catch((error) => done(JSON.stringify({ error: String((error && error.message) || error) })));`;

/** How a WebKit writes to its log what it complains of. */
const complaint = /^(?:(\S+): )?CONSOLE (?:\w+ )?(?:ERROR|WARN) (.*)$/;

export class WebKitEngine extends Engine {
  doubleTap = 1100; // ms; the driver counts two clicks at one place within a second as a double click
  #session;
  #groups = [];
  #log;
  #windows = [];

  /**
   * Starts the driver and, through it, the window: `driver` is its program, `options` the
   * name of the capability that says what to start, `window` the program and its arguments,
   * `env` what their environment has more, `groups` what else ends with it.
   */
  async start({ driver, options, window: [binary, ...args], env, log, groups = [] }) {
    this.#groups = groups;
    this.#log = log;
    await writeFile(log, ''); // what an earlier start complained of is told
    const port = await freePort();
    const { kill } = startGroup(driver, [`--port=${port}`, '--host=127.0.0.1'], {
      env: { ...process.env, ...env },
      stdio: 'ignore',
    });
    this.#groups.unshift(kill);
    try {
      this.#session = await Session.begin(port, {
        [options]: { binary, args },
        timeouts: { script: patience(), pageLoad: patience(60) },
      });
    } catch (error) {
      await this.kill();
      const said = await readFile(log, 'utf8');
      throw new Error(`${this.name} does not start: ${error.message} ${said}`, { cause: error });
    }
    this.version = this.#session.capabilities.browserVersion;
    this.#windows.push(await this.#session.get('/window'));
  }

  /** The driver sometimes never answers to a load; the second one it hears. */
  async load(url) {
    try {
      await this.#session.post('/url', { url }, 20);
    } catch (error) {
      if (error.name !== 'TimeoutError') throw error;
      await this.#session.post('/url', { url }, 60);
    }
  }

  async ask(fn, args) {
    const text = await this.#session.post('/execute/async', {
      script: asked(fn),
      args: [args.map((arg) => arg ?? null)],
    });
    const { value, error } = JSON.parse(text);
    if (error !== undefined) throw new Error(error);
    return value;
  }

  async touch([first, ...further]) {
    const move = ({ x, y }, duration = 0) => ({
      type: 'pointerMove',
      origin: 'viewport',
      duration,
      x: Math.round(x),
      y: Math.round(y),
    });
    const button = 0;
    await this.#act('pointer', [
      move(first),
      { type: 'pointerDown', button },
      ...further.map((point) => move(point, 20)),
      { type: 'pointerUp', button },
    ]);
  }

  async strike(keys) {
    await this.#act(
      'key',
      keys.flatMap((key) => {
        const value = keyCodes[key] ?? key;
        return [
          { type: 'keyDown', value },
          { type: 'keyUp', value },
        ];
      }),
    );
  }

  async giveFile(selector, path) {
    const found = await this.#session.post('/element', { using: 'css selector', value: selector });
    await this.#session.post(`/element/${Object.values(found)[0]}/value`, { text: path });
  }

  async openWindow(url) {
    const { handle } = await this.#session.post('/window/new', { type: 'window' });
    this.#windows.push(handle);
    await this.show(this.#windows.length - 1);
    if (url) await this.load(url);
  }

  async show(number) {
    await this.#session.post('/window', { handle: this.#windows[number] });
  }

  async picture() {
    return Buffer.from(await this.#session.get('/screenshot'), 'base64');
  }

  async heard() {
    const lines = (await readFile(this.#log, 'utf8')).split('\n');
    const complaints = lines.map((line) => line.match(complaint)).filter(Boolean);
    return complaints.map(([, place = '', text]) => `${text} ${place}`.trim());
  }

  /** Ends it; where its driver doesn't answer, at once. */
  async end() {
    await this.#session.end().catch(() => {});
    await this.kill();
  }

  /** Ends it as an empty battery would. */
  async kill() {
    for (const kill of this.#groups.splice(0)) await kill();
  }

  async #act(type, actions) {
    const pointer = type === 'pointer' ? { parameters: { pointerType: 'mouse' } } : {};
    await this.#session.post('/actions', { actions: [{ type, id: type, ...pointer, actions }] });
  }
}

/** Where the log of a window's console lies. */
export const logIn = (profile) => join(profile, 'console.log');
