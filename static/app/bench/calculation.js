import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { address } from '../ui/address.js';
import { settings } from '../store/settings.js';
import { ifSoon } from '../store/database.js';
import { Drafts } from '../store/drafts.js';
import { saveSetting, setting } from '../store/store.js';
import { t } from '../words/catalogue.js';
import { Fields } from '../ui/fields.js';
import { finding, findings } from '../ui/findings.js';
import { drawAnswer } from './answer.js';
import { own, setOwn } from '../site/own.js';

/** @import { Answer } from '../core/core.d.ts' */

/** One calculation on the screen: what is asked, what was typed, what came of it. */
export class Calculation {
  #form;
  #app;
  #fields;
  /** @type {Answer<any> | null} */
  #answer = null;
  #asked = 0;
  #given;
  #drafts;
  #known = true; // what was typed last time, and what stays
  #touched = false; // here, since it was opened

  constructor(form, given, app) {
    this.#drafts = new Drafts(key(form));
    this.#given = given;
    this.#form = form;
    this.#app = app;
    this.#fields = new Fields(
      form,
      {},
      () => this.#changed(),
      () => {
        this.#touched = true;
        this.#drafts.put(typed, this.#fields.values);
      },
    );
  }

  /**
   * Opens a calculation with what a step gives, else with what was typed last
   * time. The lists, one's wrenches and bottles, stay from one time to the next. A store
   * that takes long to say them is not waited for.
   */
  static async open(form, given, app) {
    const id = key(form);
    const asked = Promise.all([setting(id).catch(() => undefined), Drafts.open(id)]);
    const kept = await ifSoon(asked);
    const calculation = new Calculation(form, given, app);
    await calculation.#take(kept?.[0]);
    if (!kept) calculation.#await(asked);
    return calculation;
  }

  async #take(saved) {
    const { values } = this.#fields;
    const kept = Object(this.#drafts.get(typed) ?? saved);
    const lists = this.#form.fields.filter((f) => f.kind === 'list' && own(kept, f.name));
    const shelf = Object.fromEntries(lists.map((f) => [f.name, own(kept, f.name)]));
    Object.assign(values, structuredClone(this.#given ? { ...shelf, ...this.#given } : kept));
    if (this.#fields.complete()) await this.#calculate();
    if (!this.#answer?.ok) this.#answer = null; // nobody is scolded before typing
  }

  /** What was entered meanwhile stands, in a list after what was there. */
  async #await(asked) {
    this.#known = false;
    this.#touched = this.#drafts.get(typed) !== undefined; // by somebody who was here before
    const [saved] = await asked;
    this.#known = true;
    if (!this.#touched) {
      await this.#take(saved);
      return this.#app.redraw();
    }
    const { values } = this.#fields;
    for (const { name, kind } of this.#form.fields) {
      const [before, here] = [own(saved, name), own(values, name)];
      if (kind === 'list' && before && !own(this.#given, name))
        setOwn(values, name, [...before, ...(here ?? []).filter((row) => Object.keys(row).length)]);
    }
    return this.#changed();
  }

  async #changed() {
    this.#touched = true;
    this.#save();
    if (this.#answer || this.#fields.complete()) await this.#calculate();
    else this.#app.redraw();
  }

  /** A help, not a record; nothing is written over what is not known yet. */
  #save() {
    const { values } = this.#fields;
    if (!this.#known) return this.#drafts.put(typed, values);
    const entered = JSON.stringify(values);
    saveSetting(key(this.#form), values)
      .then(() => JSON.stringify(this.#fields.values) === entered && this.#drafts.drop(typed))
      .catch(() => {});
  }

  async #calculate() {
    const asked = ++this.#asked;
    const { op } = this.#form;
    const answer = await call(op, { ...this.#fields.given(), system: settings.system });
    if (asked !== this.#asked) return; // something else was typed meanwhile
    this.#answer = answer;
    this.#app.redraw();
  }

  draw() {
    // A step raised the question: then the answer comes first.
    const [first, second] = this.#given
      ? [this.#drawAnswer(), this.#drawForm()]
      : [this.#drawForm(), this.#drawAnswer()];
    return html`
      <header class="bar">
        ${this.#given ? back() : nothing}
        <a href=${address('bench')} class="all">${t('bench.all')}</a>
      </header>
      <h1 tabindex="-1">${t(`calc.${this.#form.op}`)}</h1>
      ${this.#caution()} ${first} ${second}
    `;
  }

  /** What to beware of while one measures; an answer says it itself. */
  #caution() {
    const { caution } = this.#form;
    return caution && !this.#answer?.ok ? finding({ code: caution, grade: 'doubt' }) : nothing;
  }

  #drawForm() {
    const submit = async (event) => {
      event.preventDefault();
      const screen = event.target.parentElement;
      await this.#calculate();
      screen.querySelector('.finding, .worked h2')?.scrollIntoView({ block: 'center' });
    };
    return html`<form class="calculation" @submit=${submit} novalidate>
      ${this.#given && this.#answer?.ok ? html`<h2>${t('bench.from')}</h2>` : nothing}
      ${this.#fields.draw(this.#answer?.findings ?? [])}
      <div class="entry">
        <button type="submit">${t('bench.work')}</button>
        ${this.#fields.empty() ? nothing : this.#clear()}
      </div>
    </form>`;
  }

  #drawAnswer() {
    const { ok, findings: refused = [] } = this.#answer ?? {};
    return html`<div class="worked" aria-live="polite">
      ${ok ? drawAnswer(this.#form.op, ok, (shelf) => this.#poured(shelf)) : findings(refused.filter((f) => !this.#fields.place(f)))}
    </div>`;
  }

  /** What was poured is gone from the shelf, and needed no more. */
  #poured(shelf) {
    const { values } = this.#fields;
    values.bottles = shelf;
    delete values.need;
    this.#answer = null;
    this.#asked++;
    this.#changed();
    this.#app.say(t('bench.poured.said'));
  }

  #clear() {
    const clear = () => {
      this.#answer = null;
      this.#asked++;
      this.#fields.clear();
    };
    return html`<button type="button" class="quiet" @click=${clear}>${t('bench.clear')}</button>`;
  }
}

/** Back to the step that raised the question. */
const back = () =>
  html`<button type="button" class="quiet" @click=${() => history.back()}>
    ${t('nav.back')}
  </button>`;

const key = ({ op }) => `calculation/${op}`;
const typed = 'values'; // the field of the drafts that holds them all
