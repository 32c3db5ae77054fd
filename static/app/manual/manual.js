import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { afterFirstPaint, computes } from '../core/start.js';
import { takeShared } from '../phone/shared.js';
import { gaps } from '../plan/sheets.js';
import { file } from '../site/data.js';
import { own } from '../site/own.js';
import { askToKeep } from '../store/promise.js';
import { flush } from '../store/drafts.js';
import { address, go } from '../ui/address.js';
import { findings } from '../ui/findings.js';
import { fitted, roomFor } from '../ui/letters.js';
import { more } from '../ui/lists.js';
import { namedRadios } from '../ui/choice.js';
import { outline } from '../ui/outline.js';
import { fold, section } from '../ui/section.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { listText } from '../words/list.js';
import { Bytes } from './bytes.js';
import { found } from './found.js';
import { Intake } from './intake.js';
import { PageText } from './page-text.js';
import { question } from './question.js';
import { numberOf, Reading } from './reading.js';
import { Saying } from './saying.js';
import { warm } from './warm.js';
import { nameOf } from './what.js';

const linesAtOnce = 60; // lines of a page that are drawn
const letter = /\p{L}/u;

/**
 * The page of a manual: its text comes in, what the core reads in it is taken into a card.
 * "#/manual" is for a new bike, "#/manual/KEY" for one that is here; with "?shared" another
 * app has laid down what is to be read.
 */
export async function manual([key, ...rest], app) {
  const shared = [key, ...rest].includes('?shared');
  const of = key?.startsWith('?') ? undefined : key;
  await Promise.all([loadWordsOf('manual'), loadWordsOf('bench'), loadLimits()]);
  const screen = { name: 'manual', tab: 'bikes', title: t('manual.title') };
  const reading = await Reading.open(of);
  if (!reading) {
    screen.draw = () => html`<h1 tabindex="-1">${t('edit.unknown')}</h1>`;
    return screen;
  }
  const { layouts } = await file('entries.json');
  const pages = new Pages(reading, app, Object.keys(layouts));
  screen.draw = () => pages.draw();
  pages.begin();
  if (shared) {
    // What came is taken once: the page that is loaded again has nothing new to tell.
    history.replaceState(null, '', address('manual', ...(of ? [of] : [])));
    app.attempt(() => takeShared(globalThis.caches, (files) => pages.keep(files)));
  }
  const endDrops = pages.watchDrops();
  let open = true;
  screen.close = () => {
    open = false;
    endDrops();
  };
  const language = document.documentElement.lang.split('-')[0];
  if (computes()) afterFirstPaint(() => warm(call, language, () => open && !reading.pages.length));
  return screen;
}

/** Words of a page in one line, without the dots that lead from a name to its figure. */
const shortened = (words) => words.replace(/\s+/g, ' ').replace(/(\. ?){4,}/g, '… ');

/** What is on the screen, and what is done there. */
class Pages {
  intake;
  #reading;
  #app;
  #layouts;
  #adding = false;
  #begun = false; // what was kept is read
  /** @type {Saying | null} */
  #saying = null;
  #came = { top: 0, button: '' }; // from where to say what a word is
  #decided = 0; // questions answered since the screen was opened
  /** @type {Map<any, { lines: PageText, shown: number }>} page -> its text, and how many lines of it */
  #texts = new Map();

  constructor(reading, app, layouts) {
    this.#reading = reading;
    this.#app = app;
    this.#layouts = layouts;
    this.intake = new Intake(app, reading, async (texts) => {
      const read = reading.add(texts);
      app.redraw(); // a text of many words takes long to draw: first it is seen to be read
      await Promise.all([read, new Promise((seen) => afterFirstPaint(() => seen(null)))]);
      this.#adding = false;
      this.#decided = 0;
      this.#arrive();
    });
  }

  /** Reads what is here already, which is seen meanwhile to be read. */
  async begin() {
    this.#begun = !this.#reading.pages.length;
    await this.#app.attempt(() => this.#reading.ready);
    if (this.#begun) return;
    this.#begun = true;
    this.#arrive();
  }

  /** Takes files in; resolves once they are written down. */
  async keep(files) {
    await this.intake.files(files);
    await flush();
  }

  /** Files may be dropped on the whole screen; returns what ends that. */
  watchDrops() {
    const over = (event) => event.preventDefault();
    const drop = (event) => {
      event.preventDefault();
      const { files, items: _ } = event.dataTransfer;
      if (files.length) this.intake.files(files);
      else this.intake.text(event.dataTransfer.getData('text/plain'));
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }

  /** Draws it anew from the top, with the focus on what comes next. */
  #arrive() {
    if (this.#app.screen?.name !== 'manual') return;
    this.#app.arrive();
    const { questions, sure, asksModel } = this.#reading;
    if (!sure.length && questions.length && !asksModel)
      document.getElementById('next')?.focus({ preventScroll: true });
  }

  /** Does something to what is known, and shows what comes next. */
  async #act(act) {
    this.intake.word = '';
    await this.#app.attempt(act);
    this.#arrive();
  }

  /** An answer to a question: to take one of several readings, or none. */
  #answer(act) {
    this.#decided++;
    return this.#act(act);
  }

  draw() {
    const { pages } = this.#reading;
    for (const page of pages) page.bytes ??= new Bytes(page.text);
    if (!this.#begun) return this.#drawWaiting();
    if (this.#saying) return this.#drawSaying(this.#saying);
    if (!pages.length || this.#adding) return this.#drawIntake();
    return pages.some(({ answer }) => answer) ? this.#drawFound() : this.#drawWaiting();
  }

  #drawIntake() {
    const back = () => {
      this.#adding = false;
      this.#arrive();
    };
    return html`
      <h1 tabindex="-1">${t(this.#adding ? 'manual.another' : 'manual.title')}</h1>
      ${this.#away()} ${this.intake.draw()}
      <div class="actions">
        ${
          this.#adding
            ? html`<button type="button" class="quiet" @click=${back}>${t('manual.back')}</button>`
            : nothing
        }
        ${this.intake.main()}
      </div>
    `;
  }

  /** The way back, when a page was just taken away. */
  #away() {
    const { away, bringBack } = this.#reading;
    return away
      ? html`<p class="entry told">
          <span role="status">${t('manual.removed')}</span>
          <button type="button" class="quiet" @click=${() => this.#act(bringBack)}>
            ${t('manual.bring-back')}
          </button>
        </p>`
      : nothing;
  }

  #drawWaiting = () =>
    html`<h1 tabindex="-1">${t('manual.title')}</h1>
      <p role="status">${t('manual.reading')}</p>`;

  #drawSaying(saying) {
    const back = () => {
      this.#saying = null;
      this.#app.redraw();
      const { top, button } = this.#came;
      scrollTo(0, top);
      document.getElementById(button)?.focus({ preventScroll: true });
    };
    return html`${saying.draw()}
      <div class="actions">
        <button type="button" class="quiet" @click=${back}>${t('manual.back')}</button>
      </div>`;
  }

  #drawFound() {
    const reading = this.#reading;
    const { sure, taken, left, questions, pages, models, found: odd } = reading;
    const asking = !sure.length;
    const count = reading.all.filter((one) => one.text).length;
    const wrong = pages.flatMap(({ answer }) => (answer?.ok ? [] : (answer?.findings ?? [])));
    return html`
      <h1 tabindex="-1">${text(reading.name || '@manual.title')}</h1>
      <p class="line" role="status">
        ${t('manual.count', { count })}
        ${taken.length ? t('manual.count.taken', { count: taken.length }) : nothing}
        ${questions.length ? t('manual.to-decide', { count: questions.length }) : nothing}
      </p>
      ${this.intake.word ? this.intake.told() : nothing} ${this.#away()}
      <div class="beside">
        <div>
          ${findings(wrong)} ${this.#tongues()} ${models.length ? this.#models() : nothing}
          ${section(
            'manual.found',
            found(sure, (list) => this.#quote(list)),
            sure.length,
          )}
          ${asking ? this.#next() : nothing} ${findings(odd)}
          ${fold(
            'manual.taken',
            taken.length,
            html`${found(taken, (list) => this.#quote(list))}
              <p>
                <button type="button" class="quiet" @click=${() => this.#act(reading.putBack)}>
                  ${t('manual.put-back')}
                </button>
              </p>`,
          )}
          ${fold(
            'manual.left',
            left.length,
            found(left, (list) => this.#quote(list, 'manual.put-one-back', reading.undecide)),
          )}
          ${asking && taken.length ? gaps(reading.gaps, { word: 'manual.gaps' }) : nothing}
        </div>
        <div class="pages">${pages.map((page, n) => this.#page(page, n))}</div>
      </div>
      ${this.#bar()}
    `;
  }

  /** What stands under the thumb: to take what is sure; then to go on. */
  #bar() {
    const reading = this.#reading;
    const { sure, taken, questions, asksLayout, asksModel } = reading;
    const another = () => {
      this.#adding = true;
      this.intake.word = '';
      this.#app.arrive();
    };
    if (!sure.length && !taken.length && !questions.length)
      return html`<div class="actions">
        <button type="button" class="main" @click=${another}>${t('manual.another')}</button>
      </div>`;
    const main = sure.length
      ? html`<button type="button" class="main" @click=${() => this.#act(reading.takeSure)}>
          ${t('manual.take', { count: sure.length })}
        </button>`
      : taken.length && !asksModel && !asksLayout && !this.#unnamed
        ? html`<button type="button" class="main" @click=${() => this.#finish()}>
            ${t('manual.to-plan')}
          </button>`
        : nothing;
    return html`<div class="actions">
      <button type="button" class="quiet" @click=${another}>${t('manual.another')}</button>
      ${main}
    </div>`;
  }

  /** What is said of pages in a language that isn't read. */
  #tongues() {
    const isForeign = ({ text, answer }) => answer?.ok && !answer.ok.language && letter.test(text);
    if (!this.#reading.pages.some(isForeign)) return nothing;
    const names = new Intl.DisplayNames([document.documentElement.lang], { type: 'language' });
    const languages = listText((limits.languages ?? []).map((tag) => names.of(tag) ?? tag));
    return html`<p class="finding" data-grade="note">${t('manual.foreign', { languages })}</p>`;
  }

  get #unnamed() {
    const { make, model } = this.#reading.card ?? {};
    return !make || !model;
  }

  async #finish() {
    const key = await this.#app.attempt(() => this.#reading.finish());
    if (!key) return;
    askToKeep();
    go('bike', key);
  }

  /** What has to be said next, of all that is open. */
  #next() {
    const reading = this.#reading;
    const { questions, taken, asksLayout } = reading;
    const [list] = questions;
    if (list) {
      const [{ id }] = list;
      const acts = {
        choose: (one, typed) => this.#answer(() => reading.choose(list, one, typed)),
        leave: () => this.#answer(() => reading.leave(list)),
        remove: (n) => this.#act(() => reading.remove(n)),
      };
      return question(list, acts, {
        number: this.#decided + 1,
        count: this.#decided + questions.length,
        found: list.flatMap((one) => reading.refused.get(one.id) ?? []),
        pageOf: (page) => reading.nameOf(page),
        wordsInCard: (one) => reading.wordsInCard(one),
        typed: reading.typed(id),
        type: (typed) => reading.type(id, typed),
      });
    }
    if (!taken.length)
      return reading.all.length
        ? html`<p>${t('manual.none-taken')}</p>`
        : html`<p>${t('manual.nothing')} ${t('manual.nothing.do')}</p>`;
    if (asksLayout) return this.#layout();
    return this.#unnamed ? this.#names() : nothing;
  }

  #models() {
    const { models, model: chosen } = this.#reading;
    const lines = models.map((model) => ({ id: model, label: text(model) }));
    return namedRadios('manual.models', lines, chosen || undefined, (model) =>
      this.#act(() => this.#reading.say({ model })),
    );
  }

  /** How the bike keeps its oil: the likeliest first. */
  #layout() {
    const { layoutRead } = this.#reading;
    const others = this.#layouts.filter((layout) => layout !== layoutRead?.word);
    return html`<section class="question">
      <h2 id="next" tabindex="-1">${t('edit.layout')}</h2>
      <p>${t('manual.layout')}</p>
      <ul class="choices with-signs">
        ${[...(layoutRead ? [layoutRead.word] : []), ...others].map(
          (layout) =>
            html`<li>
              <button
                type="button"
                class="quiet"
                @click=${() => this.#act(() => this.#reading.say({ layout }))}
              >
                ${outline(layout)} <span>${t(`layout.${layout}`)}</span>
              </button>
            </li>`,
        )}
      </ul>
    </section>`;
  }

  #names() {
    const reading = this.#reading;
    const { card } = reading;
    const enter = (event) => {
      event.preventDefault();
      const { make, model } = event.target.elements;
      const names = { make: make.value.trim(), model: model.value.trim() };
      for (const name of Object.keys(names)) reading.type(name, '');
      this.#act(() => reading.say({ names }));
    };
    const field = (name) =>
      html`<div class="field">
        <label for=${name}>${t(`manual.is.${name}`)}</label>
        <input
          id=${name}
          name=${name}
          autocomplete="off"
          .value=${reading.typed(name) || own(card, name) || (name === 'model' ? reading.modelName : '')}
          @input=${({ target }) => reading.type(name, fitted(target))}
        />
        ${roomFor(name, limits.entry)}
      </div>`;
    return html`<section class="question">
      <h2 id="next" tabindex="-1">${t('manual.names')}</h2>
      <form @submit=${enter}>
        ${field('make')} ${field('model')}
        <button type="submit">${t('manual.names.take')}</button>
      </form>
    </section>`;
  }

  /** The words that readings come from; opened, what else can be done about them. */
  #quote(list, word = 'manual.leave', act = this.#reading.leave) {
    const quotes = new Map();
    for (const one of list) {
      const words = shortened(one.page.bytes.slice(one.quote));
      const [whole = words] = [...quotes.keys()].filter((other) => other.includes(words));
      quotes.set(whole, [...(quotes.get(whole) ?? []), one]);
    }
    return [...quotes].map(([words, readings]) => {
      const names = readings.map(({ what }) => nameOf(what));
      const pages = readings.map(({ page }) => this.#reading.nameOf(page)).filter(Boolean);
      return html`<details class="standing from-page">
        <summary class="written" dir="auto">“${words}”</summary>
        <p>${[...new Set([...names, ...pages])].join(' · ')}</p>
        <button type="button" class="quiet" @click=${() => this.#act(() => act(readings))}>
          ${t(word)}
        </button>
      </details>`;
    });
  }

  /** A page: its number, its text with what was read in it marked, and the way to say what is what. */
  #page(page, n) {
    const reading = this.#reading;
    const marks = reading.all
      .filter((one) => one.page === page && (one.text || one.doubts?.length))
      .map((one) => ({
        from: page.bytes.at(one.quote.from),
        to: page.bytes.at(one.quote.to),
        kind: one.decided
          ? one.decided.take
            ? 'taken'
            : 'left'
          : one.sure === 'yes'
            ? 'sure'
            : 'ask',
      }));
    const { lines, shown } = this.#texts.get(page) ?? this.#begin(page);
    const further = () => {
      this.#texts.set(page, { lines, shown: shown + linesAtOnce });
      this.#app.redraw();
    };
    const say = (place) => {
      this.#came = { top: scrollY, button: `say-${n}` };
      const near = reading.all.filter((one) => one.page === page);
      this.#saying = new Saying(
        page,
        place,
        near,
        () => this.#app.redraw(),
        (said) => this.#tell(page, said),
      );
      this.#app.arrive();
    };
    lines.tapped = say;
    lines.show(marks, shown);
    const number = numberOf(page);
    const id = `number-${n}`;
    return html`<section class="page" aria-labelledby=${`page-${n}`}>
      <h2 id=${`page-${n}`}>
        ${reading.nameOf(page) || t(number ? 'manual.page' : 'manual.page.none', { number })}
      </h2>
      <p class="line">${t('manual.tap')}</p>
      ${lines.element} ${more(lines.length - shown, further)}
      <p class="entry">
        <button id=${`say-${n}`} type="button" class="quiet" @click=${() => say(0)}>
          ${t('manual.say')}
        </button>
        <button type="button" class="quiet" @click=${() => this.#act(() => reading.remove(n))}>
          ${t('manual.remove')}
        </button>
      </p>
      <div class="field short">
        <label for=${id}>${t('edit.page')}</label>
        <input
          id=${id}
          autocomplete="off"
          .value=${number}
          @change=${({ target }) => this.#act(() => reading.number(page, target.value.trim()))}
        />
      </div>
    </section>`;
  }

  /** The text of a page that is on the screen for the first time. */
  #begin(page) {
    const text = { lines: new PageText(page.text), shown: linesAtOnce };
    this.#texts.set(page, text);
    return text;
  }

  async #tell(page, said) {
    const wrong = await this.#reading.tell(page, said);
    if (wrong.length) return wrong;
    this.#saying = null;
    this.#arrive();
    return [];
  }
}
