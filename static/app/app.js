import { route } from './ui/address.js';
import { loadWordsOf, t } from './words/catalogue.js';
import { bikes } from './bikes/bikes.js';
import { loadLaterStyle } from './site/later-style.js';
import { own } from './site/own.js';
import { offerRescue } from './site/rescue.js';
import { standing } from './store/database.js';
import { settled } from './store/settings.js';

const full = 'store.full';
const newer = 'store.newer';

/** Fetches the screens that the first one can do without, and their words; the page asks for them at once after it. */
export async function fetchScreens() {
  const [module] = await Promise.all([
    import('./screens.js'),
    loadWordsOf('work'),
    loadLaterStyle(),
  ]);
  return module;
}

/**
 * A screen is opened with the rest of its address.
 *
 * @typedef {object} Screen
 * @property {string} name
 * @property {string} tab
 * @property {string} title
 * @property {() => unknown} draw
 * @property {(parts: string[]) => boolean} [holds] whether an address is one of its own
 * @property {(parts: string[]) => unknown} [move] goes there; falsy if it is there already
 * @property {() => void} [close]
 */

/** @type {(name: string) => Promise<any>} */
async function screenOf(name) {
  if (!name || name === 'bikes') return bikes;
  const [{ screens }] = await Promise.all([fetchScreens(), settled()]);
  return own(screens, name) ?? bikes;
}

/** Why something failed, as a word id; `word` says it of what is no matter of room. */
function reasonOf(error, word) {
  if (error.name === 'QuotaExceededError') return full;
  // The store throws nothing else; a part of the page that can't be had is no matter of it.
  return error.word || word || (error instanceof DOMException ? 'store.error' : 'page.failed');
}

/** What is on the screen, and the few things that every screen may ask for. */
export class App {
  /** @type {Screen | null} */
  screen = null;
  said = ''; // read out by screen readers
  changelog = null;
  updateLater = false;
  asks; // draws what is asked on the first screen
  news; // draws what has changed since the last visit
  beside = () => {}; // draws what stands beside the screen
  /** @type {((screen: Screen) => unknown) | undefined} the list beside a screen, in a wide window */
  list = undefined;
  later = fetchScreens; // what the first screen may need after its first picture
  /** @type {(draw: () => void) => void} what stays as it is while the screen is drawn anew */
  hold = (draw) => draw();
  #rescued = false; // the person was told of the newer store, and offered to save it
  #lasting = ''; // word id of a trouble that stays
  /** @type {Map<string, string>} what was tried and failed -> word id of why */
  #failed = new Map();
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
      if (this.screen.move?.(rest)) this.arrive();
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

  /** A screen that can't be made is reported, in place of a page that stays empty. */
  async #load(name, rest) {
    try {
      const make = await screenOf(name);
      return await make(rest, this);
    } catch {
      const taken = offerRescue(''); // which says why by itself
      return { name: 'failed', title: t('app.name'), draw: () => (taken ? '' : t('page.failed')) };
    }
  }

  /** A new screen begins at its top, and says its heading. */
  arrive() {
    this.said = '';
    this.redraw();
    scrollTo(0, 0);
    /** @type {HTMLElement | null} */ (document.querySelector('#screen h1'))?.focus({
      preventScroll: true,
    });
  }

  redraw() {
    if (!this.screen) return;
    if (standing.word === newer) this.#rescued ||= offerRescue(t(newer));
    this.hold(() => {
      this.#draw(this);
      this.beside();
    });
  }

  /** Says something in passing. */
  say(sentence) {
    this.said = sentence;
    this.redraw();
  }

  /** Word id of what the person must know: '' when all is well. */
  get trouble() {
    if (this.#rescued && standing.word === newer) return ''; // it stands above the screen
    return standing.word || ([...this.#failed.values()].at(-1) ?? this.#lasting);
  }

  /** Shows a trouble that stays until the page is loaded again. */
  fail(word) {
    this.#lasting = word;
    this.redraw();
  }

  /**
   * Runs an action that may fail at the store; resolves to undefined then, and says so,
   * until the same is tried again and goes well.
   */
  async attempt(action, word = '') {
    const what = word + action; // the same lines of the program are the same attempt
    const { writes } = standing;
    try {
      const result = await action();
      this.#failed.delete(what);
      // What could be written now takes back that the phone is full.
      if (standing.writes > writes)
        for (const [other, why] of this.#failed) if (why === full) this.#failed.delete(other);
      return result;
    } catch (error) {
      this.#failed.set(what, reasonOf(error, word));
      this.redraw();
      return undefined;
    }
  }
}
