import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { address } from '../ui/address.js';
import { addressWith } from '../ui/address-with.js';
import { settings } from '../store/settings.js';
import { ifSoon } from '../store/database.js';
import { Drafts } from '../store/drafts.js';
import { setting } from '../store/store.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { label, named } from '../ui/labels.js';
import { finding, findings } from '../ui/findings.js';
import { icon } from '../ui/icon.js';
import { canListen, hear } from '../phone/ear.js';
import { canSpeak, hush, speak } from '../phone/voice.js';
import { own, setOwn } from '../site/own.js';
import { fitted, roomFor } from '../ui/letters.js';
import { drawAnswer } from './answer.js';
import { said, spokenAnswer, spokenFinding } from './spoken.js';

/** @import { Finding, Goal, LineReading, Piece, PlaceSpan, Put } from '../core/core.d.ts' */

const letters = 300; // of a line: none that is said is longer
const scope = 'bench/line'; // of its drafts

/** One line above the calculations, typed or said: how it was read, and its answer. */
export class Line {
  #forms;
  #app;
  #drafts = new Drafts(scope);
  /** @type {string | undefined} in which the phone can listen by itself */
  #language;
  /** @type {{ stop: () => void } | undefined} */
  #ear;
  #deaf = false; // the listening came to nothing
  #spoken = false; // the line was said, and not typed
  #aloud = false;
  /** @type {string | undefined} the calculation that was chosen for it */
  #op;
  /** @type {Put[]} what the person said of pieces that were offered */
  #put = [];
  /** @type {LineReading | undefined} */
  #reading;
  /** @type {Finding[] | undefined} what refuses the line */
  #refused;
  #read = ''; // the line that #reading is of
  #asked = 0;
  #typed = false; // since it was opened

  constructor(forms, app) {
    this.#forms = forms;
    this.#app = app;
    canListen().then(async (language) => {
      if (!language) return;
      await loadWordsOf('hands');
      this.#language = language;
      app.redraw();
    });
  }

  /** Opens it with the line that stood there; a store that takes long to say it is not waited for. */
  static async open(forms, app) {
    const line = new Line(forms, app);
    const kept = Drafts.open(scope);
    if (!(await ifSoon(kept))) kept.then(() => line.#late());
    await line.#ask();
    return line;
  }

  /** The line that stood there came late. */
  async #late() {
    if (!this.#typed) await this.#ask();
  }

  get #line() {
    return this.#drafts.get('text') ?? '';
  }

  /** A new line, or a letter of it: what was said of the one before says nothing of it. */
  #type(typed) {
    this.#typed = true;
    if (typed) this.#drafts.put('text', typed);
    else this.#drafts.drop('text');
    this.#op = undefined;
    this.#put = [];
    this.#spoken = false;
    hush();
  }

  async #ask() {
    const asked = ++this.#asked;
    const line = this.#line.trim();
    const { ok, findings: refused } = line
      ? await call('read-line', {
          text: line,
          system: settings.system,
          language:
            (this.#put.length && this.#reading?.language) ||
            document.documentElement.lang.split('-')[0],
          op: this.#op,
          put: this.#put,
          kept: await this.#shelf(),
        })
      : {};
    if (asked !== this.#asked) return; // another line was typed meanwhile
    this.#reading = ok;
    this.#refused = refused;
    this.#read = line;
    if (this.#spoken && canSpeak()) this.#sayAloud();
    this.#app.redraw();
  }

  /** Says how the line was read, and its answer, to who has no eye for the phone. */
  #sayAloud() {
    hush();
    this.#aloud = true;
    speak(this.#sentences(), () => {
      this.#aloud = false;
      this.#app.redraw();
    });
  }

  /** The wrenches and bottles that the forms of the calculations know, unless the store takes long to say them. */
  async #shelf() {
    const shelf = {};
    for (const { op, fields } of this.#forms)
      for (const { name } of fields.filter((f) => f.rows?.some((row) => row.name === 'id'))) {
        const kept = Object(await ifSoon(setting(`calculation/${op}`)).catch(() => undefined));
        const rows = own(kept, name);
        if (rows) setOwn(shelf, name, rows);
      }
    return shelf;
  }

  /** Listens for one line, or stops. */
  #listen() {
    if (this.#aloud) return hush();
    if (this.#ear) return this.#stop();
    this.#deaf = false;
    const heard = (line) => {
      this.#stop();
      if (!line) return;
      this.#type(line);
      this.#spoken = true;
      this.#ask();
    };
    this.#ear = hear(this.#language ?? '', heard, () => {
      this.#deaf = true;
      this.#stop();
    });
    this.#app.redraw();
  }

  #stop() {
    this.#ear?.stop();
    this.#ear = undefined;
    this.#app.redraw();
  }

  /** Stops listening and reading when the screen is left. */
  end() {
    hush();
    this.#ear?.stop();
    this.#ear = undefined;
  }

  draw() {
    return html`<form class="line" @submit=${this.#submit} novalidate>
        <div class="field">
          <label for="line"
            >${t('bench.line')}
            <small>${t('bench.like', { example: t('bench.line.hint') })}</small></label
          >
          <input
            id="line"
            name="line"
            .value=${this.#line}
            autocomplete="off"
            autocapitalize="none"
            enterkeyhint="go"
            @input=${({ target }) => this.#type(fitted(target))}
          />
          ${roomFor('line', letters)}
        </div>
        <div class="entry">
          <button type="submit">${t('bench.line.read')}</button>
          ${this.#language ? this.#microphone() : nothing}
        </div>
        ${this.#language ? html`<small>${t('bench.line.say.why')}</small>` : nothing}
        ${this.#deaf ? html`<p role="alert">${t('bench.line.deaf')}</p>` : nothing}
      </form>
      <div class="worked" aria-live=${this.#spoken && canSpeak() ? 'off' : 'polite'}>
        ${this.#drawReading()}
      </div>`;
  }

  #submit = async (event) => {
    event.preventDefault();
    const screen = event.target.parentElement;
    const before = document.activeElement;
    this.#spoken = false;
    hush();
    await this.#ask();
    if (document.activeElement !== before) return; // whoever has gone on stays there
    screen.querySelector('.worked h2, .worked .finding')?.scrollIntoView({ block: 'start' });
  };

  #microphone() {
    const word = this.#ear ? 'bench.line.listening' : 'bench.line.say';
    return html`<button type="button" class="quiet" @click=${() => this.#listen()}>
      ${this.#aloud ? html`${icon('speaker')} ${t('hands.reading')}` : html`${icon('microphone')} ${t(word)}`}
    </button>`;
  }

  /** What is read aloud: what stands below the line, in its order. */
  #sentences() {
    const { op, ops = [], pieces = [], unread = [], answer } = this.#reading ?? {};
    if (!this.#reading) return (this.#refused ?? []).map(spokenFinding);
    if (!op)
      return ops.length
        ? [t('bench.line.which-question'), ...ops.map((one) => t(`calc.${one}`))]
        : [spokenFinding({ code: 'line-not-read' })];
    const { missing, others } = this.#lacks(this.#reading);
    return [
      t(`calc.${op}`),
      ...pieces
        .filter(({ field }) => field)
        .map((piece) => `${this.#label(op, piece)}: ${saidValue(piece)}`),
      ...pieces.flatMap(({ quote, options = [] }) =>
        options.length ? [this.#asking(op, quote, options).question] : [],
      ),
      ...unread.map((quote) => spokenFinding(this.#unreadPiece(quote))),
      ...(missing.length ? [[t('bench.line.missing'), missing.join(', ')].join(': ')] : []),
      ...others.map(spokenFinding),
      ...(answer ? spokenAnswer(answer) : []),
    ];
  }

  #drawReading() {
    const reading = this.#reading;
    if (!reading) return findings(this.#refused);
    const { op, ops = [] } = reading;
    if (!op) return ops.length ? this.#whichQuestion(ops) : finding({ code: 'line-not-read' });
    const others = ops.filter((other) => other !== op);
    return html`
      <h2>${t(`calc.${op}`)}</h2>
      ${this.#pieces(reading)} ${(reading.pieces ?? []).map((piece) => this.#offered(op, piece))}
      ${this.#unread(reading)} ${this.#lacking(reading)}
      <p><a class="button quiet" href=${formOf(op, reading.given)}>${t('bench.line.form')}</a></p>
      ${reading.answer ? drawAnswer(op, reading.answer) : nothing}
      ${
        others.length
          ? html`<details class="more">
              <summary>${t('bench.line.other')}</summary>
              ${this.#questions(others)}
            </details>`
          : nothing
      }
    `;
  }

  #whichQuestion(ops) {
    return html`<h2>${t('bench.line.which-question')}</h2>
      ${this.#questions(ops)}`;
  }

  #questions(ops) {
    const choose = (op) => {
      this.#op = op;
      this.#put = [];
      this.#ask();
    };
    return html`<div class="entry">
      ${ops.map(
        (op) =>
          html`<button type="button" class="quiet" @click=${() => choose(op)}>
            ${t(`calc.${op}`)}
          </button>`,
      )}
    </div>`;
  }

  /**
   * Each piece that was read, beside the field that it fills.
   *
   * @param {LineReading} reading
   */
  #pieces({ op = '', pieces = [] }) {
    const read = pieces.filter(({ field }) => field);
    return read.length
      ? html`<h3>${t('bench.line.read-as')}</h3>
          <dl>
            ${read.map(
              (piece) =>
                html`<div class="figure">
                  <dt>${this.#label(op, piece)}</dt>
                  <dd>${valueOf(piece)} <span class="other">${this.#quoted(piece.quote)}</span></dd>
                </div>`,
            )}
          </dl>`
      : nothing;
  }

  /** @param {Goal | Piece} goal */
  #label(op, goal) {
    return label(op, this.#field(op, goal));
  }

  /**
   * @param {string} op
   * @param {Goal | Piece} goal
   */
  #field(op, { list, field }) {
    const { fields } = this.#forms.find((form) => form.op === op);
    const within = list ? fields.find(({ name }) => name === list).rows : fields;
    return within.find(({ name }) => name === field);
  }

  /** @param {PlaceSpan} quote */
  #quote({ from = 0, to = 0 }) {
    return new TextDecoder().decode(new TextEncoder().encode(this.#read).slice(from, to));
  }

  #quoted(quote) {
    return t('bench.line.quote', { text: this.#quote(quote) });
  }

  /**
   * A piece that may be several things, with a button for each.
   *
   * @param {string} op
   * @param {Piece} piece
   */
  #offered(op, { quote, options = [] }) {
    if (!options.length) return nothing;
    const { one, question } = this.#asking(op, quote, options);
    const choose = (goal) => {
      this.#put = [...this.#put, { quote, list: goal.list, field: goal.field, text: goal.text }];
      this.#ask();
    };
    return html`<div class="finding" data-grade="doubt">
      <p>${question}</p>
      <div class="entry">
        ${options.map(
          (goal) =>
            html`<button type="button" class="quiet" @click=${() => choose(goal)}>
              ${one ? valueOf(goal) : this.#label(op, goal)}
            </button>`,
        )}
      </div>
    </div>`;
  }

  /** What is asked about a piece that may be several things; `one`: only its unit is open. */
  #asking(op, quote, options) {
    const one = options.every(({ field }) => field === options[0].field);
    const values = { text: this.#quote(quote), field: one ? this.#label(op, options[0]) : '' };
    return { one, question: t(one ? 'bench.line.which-unit' : 'bench.line.which-field', values) };
  }

  /** @param {LineReading} reading */
  #unread({ unread = [] }) {
    return unread.map((quote) => finding(this.#unreadPiece(quote)));
  }

  #unreadPiece(quote) {
    return {
      code: 'line-unread',
      grade: /** @type {const} */ ('note'),
      values: { text: this.#quote(quote) },
    };
  }

  /**
   * What keeps it from an answer: the names of the fields that are missing, and the rest.
   *
   * @param {LineReading} reading
   */
  #lacks({ op = '', lacks = [] }) {
    const field = ({ where }) => this.#field(op, goalOf(where));
    const missing = lacks.filter(({ code, where }) => code === 'missing' && where.length > 1);
    const others = lacks.filter((found) => !missing.includes(found));
    return {
      missing: missing.map((found) => label(op, field(found))),
      others: others.map((found) => (field(found) ? named(op, field(found), found) : found)),
    };
  }

  /** @param {LineReading} reading */
  #lacking(reading) {
    const { missing, others } = this.#lacks(reading);
    return html`${
      missing.length
        ? html`<h3>${t('bench.line.missing')}</h3>
            <ul>
              ${missing.map((name) => html`<li>${name}</li>`)}
            </ul>`
        : nothing
    }
    ${findings(others)}`;
  }
}

/**
 * The field that a finding is about: "/torque", or "/wrenches/0/high" of a list.
 *
 * @returns {Goal}
 */
function goalOf(where) {
  const [, name, row, field] = where.split('/');
  return row ? { list: name, field } : { field: name };
}

/**
 * What goes into a field, as a person reads it.
 *
 * @param {Goal | Piece} goal
 */
const valueOf = ({ word, text: value }) =>
  word
    ? html`<strong>${t(word)}</strong>`
    : html`<span class="value">${value === 'yes' ? t('bench.line.yes') : text(value)}</span>`;

/** @param {Goal | Piece} goal */
const saidValue = ({ word, text: value }) =>
  word ? t(word) : value === 'yes' ? t('bench.line.yes') : said(value);

/** The address of the full form, filled in; lists and what is ticked go there as JSON. */
const formOf = (op, given = {}) =>
  Object.values(given).every((value) => typeof value === 'string')
    ? addressWith(['bench', op], given)
    : address('bench', op, JSON.stringify(given));
