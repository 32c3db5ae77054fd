import { route } from './router.js';
import { loadWordsOf, t } from './words.js';
import { bikes } from './view/bikes.js';
import { theirStyle } from './later-style.js';

const full = 'store.full';

/** Fetches the screens that the first one can do without, and their words; the page asks for them at once after it. */
export async function fetchScreens() {
  const [part] = await Promise.all([import('./screens.js'), loadWordsOf('work'), theirStyle()]);
  return part;
}

// A screen is opened with the rest of its address; it says its name, its tab
// and its title, and draws itself.
const screenOf = async (name) =>
  !name || name === 'bikes' ? bikes : ((await fetchScreens()).screens[name] ?? bikes);

/** What is on the screen, and the few things that every screen may ask for. */
export class App {
  screen = null;
  said = ''; // read out by screen readers
  trouble = ''; // word id of what the person must know
  changelog = null;
  updateLater = false;
  #draw;
  #ticket = 0;

  /** `draw` puts the app's state on the page. */
  constructor(draw) {
    this.#draw = draw;
  }

  /** Opens the screen of the address; a slower one that was asked for before is dropped. */
  async open() {
    const ticket = ++this.#ticket;
    const [name = 'bikes', ...rest] = route();
    if (name === this.screen?.name && this.screen.holds?.(rest)) {
      if (this.screen.move(rest)) this.arrive();
      return;
    }
    const screen = await this.#load(name, rest);
    if (ticket !== this.#ticket) return;
    const first = this.screen === null;
    this.screen?.close?.();
    this.screen = screen;
    document.title = `${screen.title} · ${t('app.name')}`;
    if (first) this.redraw();
    else this.arrive();
  }

  /** A screen that can't be made is told, in place of a page that stays empty. */
  async #load(name, rest) {
    try {
      const make = await screenOf(name);
      return await make(rest, this);
    } catch {
      return { name: 'failed', title: t('app.name'), draw: () => t('page.failed') };
    }
  }

  /** A new screen begins at its top, and says its heading. */
  arrive() {
    this.said = '';
    this.redraw();
    scrollTo(0, 0);
    document.querySelector('#screen h1')?.focus({ preventScroll: true });
  }

  redraw() {
    if (this.screen) this.#draw(this);
  }

  /** Says something in passing. */
  say(sentence) {
    this.said = sentence;
    this.redraw();
  }

  /** Tells of a trouble that stays until the page is loaded again. */
  fail(word) {
    this.trouble = word;
    this.redraw();
  }

  /** Runs work that may fail to store; resolves to undefined then, and tells. */
  async keep(work, word = 'store.failed') {
    try {
      const result = await work();
      if ([word, full].includes(this.trouble)) this.trouble = '';
      return result;
    } catch (error) {
      this.fail(error.name === 'QuotaExceededError' ? full : word);
      return undefined;
    }
  }
}
