import { html, nothing } from 'lit-html';
import { askToKeep } from '../store/promise.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { day } from '../words/dates.js';
import { Fault } from './bounds.js';
import { readBackup, restore } from './restore.js';
import { address } from '../ui/address.js';
import { kinds } from './tally.js';
import { unreadList } from './unread-list.js';
import { loadSettings } from '../store/settings.js';

/** @import { Values } from '../words/catalogue.js' */
/** @import { Review } from './restore.js' */
/** @import { Tally } from './tally.js' */

const often = 200; // ms between what is said of a progress

/** Restoring: a file is read and checked, shown, and only then put in. */
export class RestoreForm {
  #app;
  #then;
  /** @type {[word: string, values?: Values] | null} */
  #said = null;
  /** @type {Review | null} */
  #read = null;
  /** Whether it came as codes: then it fills the screen from the beginning to the end. */
  #coded = false;
  /** @type {AbortController | null} while it works: what stops it */
  #work = null;

  /** `then` is run when something was restored. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
  }

  /** Whether it fills the screen. */
  get open() {
    return Boolean(this.#read) || this.#coded;
  }

  #say(word, values) {
    this.#said = [word, values];
    this.#app.redraw();
  }

  /** How the work goes on, and what stops it. */
  #begin(word) {
    this.#work = new AbortController();
    let said = -often;
    const progress = (share) => {
      if (performance.now() - said < often) return;
      said = performance.now();
      this.#say(word, { share: Math.floor(share * 100) });
    };
    progress(0);
    return { signal: this.#work.signal, progress };
  }

  /**
   * Takes the text of a bike that was read from codes: it goes the way of a file.
   *
   * @param {string} text
   */
  takeCodes(text) {
    this.#coded = true;
    return this.#choose(new Blob([text], { type: 'text/plain' }));
  }

  async #choose(file) {
    if (this.#work) return;
    try {
      // What is wrong with a card is said in the words of the editor, too.
      const [read] = await Promise.all([
        readBackup(file, this.#begin('restore.checking')),
        loadWordsOf('cards').catch(() => {}),
      ]);
      this.#read = read;
      this.#said = null;
    } catch (error) {
      this.#said = this.#coded ? saidOfCodes(error) : saidOf(error);
    }
    this.#work = null;
    if (this.#read) this.#app.arrive();
    else this.#app.redraw();
  }

  async #restore() {
    if (this.#work || !this.#read) return;
    try {
      const { asideAdded } = await restore(this.#read, this.#begin('restore.doing'));
      this.#said = [asideAdded ? 'restore.done-aside' : 'restore.done'];
      if (asideAdded) this.#coded = false; // it says that something lies below
      await loadSettings();
    } catch (error) {
      const { name } = /** @type {Error} */ (error);
      const words = new Map([
        ['QuotaExceededError', 'restore.full'],
        ['AbortError', this.#coded ? 'restore.codes-failed' : 'restore.stopped-midway'],
      ]);
      const failed = this.#coded ? 'restore.codes-failed' : 'restore.failed';
      this.#said = [words.get(name) ?? failed];
    }
    this.#work = null;
    this.#read = null;
    askToKeep();
    await this.#then();
    this.#app.arrive();
  }

  draw() {
    if (this.#read) return this.#review(this.#read);
    return this.#coded ? this.#ofCodes() : this.#form();
  }

  #status() {
    return html`<p role="status" class="told">${this.#said ? t(...this.#said) : nothing}</p>
      ${
        this.#work
          ? html`<p>
              <button type="button" class="quiet" @click=${() => this.#work?.abort()}>
                ${t('restore.stop')}
              </button>
            </p>`
          : nothing
      }`;
  }

  #form() {
    const pick = ({ target }) => {
      const [file] = target.files;
      target.value = '';
      if (file) this.#choose(file);
    };
    return html`<p>${t('restore.how')}</p>
      <p class="file">
        <input id="backup-file" type="file" ?disabled=${Boolean(this.#work)} @change=${pick} />
        <label for="backup-file" class="button">${t('restore.choose')}</label>
      </p>
      ${this.#status()}`;
  }

  /** What is said of codes before and after they are looked at. */
  #ofCodes() {
    return html`<h1 tabindex="-1">${t('restore.title')}</h1>
      ${this.#status()}
      ${
        this.#work
          ? nothing
          : html`<p class="entry">
              <a class="button" href=${address('bikes')}>${t('restore.bikes')}</a>
              <a class="button quiet" href=${address('cards', 'read')}
                >${t('restore.codes-again')}</a
              >
            </p>`
      }`;
  }

  /** @param {Review} review */
  #review({ backup, tally }) {
    const leave = () => {
      this.#read = null;
      this.#coded = false;
      this.#app.arrive();
    };
    const busy = Boolean(this.#work);
    const ofFile = this.#coded ? 'restore.codes-whole' : 'restore.whole';
    const whole = backup.rescued ? 'restore.rescued' : ofFile;
    return html`<h1 tabindex="-1">${t('restore.title')}</h1>
      <p>${t(whole, { date: day(backup.made) })}</p>
      ${counts(tally)} ${changes(tally)}
      <p class="entry">
        <button type="button" ?disabled=${busy} @click=${() => this.#restore()}>
          ${t('restore.do')}
        </button>
        <button type="button" class="quiet" ?disabled=${busy} @click=${leave}>
          ${t('restore.leave')}
        </button>
      </p>
      ${this.#status()}
      ${
        tally.unreadCount
          ? html`<p>${t('restore.aside', { count: tally.unreadCount })}</p>
              ${unreadList(tally.unread, tally.unreadCount)}`
          : nothing
      }`;
  }
}

/**
 * Why a file could not be read.
 *
 * @param {any} error
 * @returns {[word: string, values?: Values]}
 */
function saidOf(error) {
  if (error instanceof Fault) return [error.message];
  return [error.name === 'AbortError' ? 'restore.stopped' : 'restore.unanswered'];
}

/**
 * Why what came as codes could not be read.
 *
 * @param {any} error
 * @returns {[word: string, values?: Values]}
 */
function saidOfCodes(error) {
  const [word] = saidOf(error);
  return [wrongCodes.has(word) ? 'restore.codes-damaged' : word];
}

// What of a file is said in other words of codes.
const wrongCodes = new Set(['restore.not-one', 'restore.damaged']);

/**
 * How many of each kind there are, and are new.
 *
 * @param {Tally} tally
 */
function counts(tally) {
  const all = kindsOf(tally);
  return html`<dl class="holds">
    ${all.map((kind) => {
      const { held, added } = tally.of(kind);
      return html`<div>
        <dt>${t(`restore.${kind}`)}</dt>
        <dd>${t('restore.counts', { held, added })}</dd>
      </div>`;
    })}
  </dl>`;
}

/** The kinds that are shown; facts, and something else, only where there are any. */
const kindsOf = (tally) =>
  [...kinds, 'lines'].filter(
    (kind) => (kind !== 'facts' && kind !== 'lines') || tally.of(kind).held,
  );

/** How many of each kind differ from what is here, and can't be read, where there are any. */
const oddities = (tally) =>
  kindsOf(tally).flatMap((kind) => {
    const { beside, unread } = tally.of(kind);
    const values = { kind: t(`restore.${kind}`) };
    return [
      ...(beside ? [t('restore.odd.beside', { ...values, count: beside })] : []),
      ...(unread ? [t('restore.odd.unread', { ...values, count: unread })] : []),
    ];
  });

/**
 * What would change.
 *
 * @param {Tally} tally
 */
function changes(tally) {
  const { grown, nothingNew } = tally;
  const odd = oddities(tally);
  const differs = kinds.some((kind) => tally.of(kind).beside);
  return html`${nothingNew ? html`<p>${t('restore.nothing-new')}</p>` : nothing}
    ${grown ? html`<p>${t('restore.grown', { count: grown })}</p>` : nothing}
    ${
      odd.length
        ? html`<ul>
            ${odd.map((line) => html`<li>${line}</li>`)}
          </ul>`
        : nothing
    }
    ${differs ? html`<p>${t('restore.beside')}</p>` : nothing}
    <p>${t('restore.rule')}</p>`;
}
