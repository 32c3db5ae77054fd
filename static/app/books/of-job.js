import { html, nothing } from 'lit-html';
import { address } from '../ui/address.js';
import { said } from '../ui/said.js';
import { section } from '../ui/section.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { Form } from './form.js';
import { wanted } from './list.js';
import { Book } from './book.js';
import { wantOf } from './wants.js';

/** @import { DrainedOil, KeptWrench, ShelfPick, WantedLine } from '../core/core.d.ts' */

/** What a job puts into the books: what it drained, what it used, and the wrenches it was done with. */
export class OfJob {
  /** @type {Book} */
  oil;
  /** @type {Book} */
  shelf;
  /** @type {Book} */
  wrench;
  job;

  /** @param {import('../plain/open.js').WorkedOut} job */
  constructor(job) {
    this.job = job;
  }

  /**
   * @param {import('../plain/open.js').WorkedOut} job
   * @param {any} app
   */
  static async open(job, app) {
    const of = new OfJob(job);
    const { record, state, plan } = job;
    const drained = (state.oils ?? []).flatMap(({ circuit, role, waste, out }) =>
      out ? [{ job: record.id, circuit, role, waste, out }] : [],
    );
    const torques = (plan.bolts ?? []).flatMap(({ today, torque }) =>
      today ? (torque?.texts?.slice(0, 1) ?? []) : [],
    );
    [of.oil, of.shelf, of.wrench] = await Promise.all([
      Book.open('oil', app, { jobs: drained }),
      Book.open('shelf', app, { wants: [wantOf(job)] }),
      Book.open('wrench', app, { torques }),
    ]);
    return of;
  }

  get books() {
    return [this.oil, this.shelf, this.wrench];
  }

  draw() {
    const { job } = this;
    return html`
      <h1 tabindex="-1">${t('record.books')}</h1>
      <p><a href=${address('record', job.record.id)}>${text(job.name)}</a></p>
      ${section('books.oil', this.#drained())} ${section('books.shelf', this.#used())}
      ${section('books.wrenches', this.#wrenches())}
    `;
  }

  /** What was drained, and the can that takes it. */
  #drained() {
    const { cans = [], proposed = [] } = this.oil.answer;
    if (!proposed.length)
      return html`<p>
        ${t(this.job.state.oils?.some(({ out }) => out) ? 'books.oil.all-in' : 'books.oil.none')}
      </p>`;
    return proposed.map((drained) => this.#pour(drained, cans));
  }

  /**
   * @param {DrainedOil} drained
   * @param {import('../core/core.d.ts').Can[]} cans
   */
  #pour({ circuit, role = '', waste, kind, volume, typed = '', can = '', over }, cans) {
    const about = `job ${this.job.record.id} ${circuit}`;
    const fit = cans.filter((each) => !each.gone && each.waste === waste);
    const form = new Form(this.oil, about, [
      {
        name: 'of',
        word: 'books.oil.can',
        kind: 'choice',
        words: fit.map(({ id }) => id),
        names: new Map(fit.map(({ id, name }) => [id, ['books.oil.this-can', name]])),
        told: can,
      },
      { name: 'value', word: 'books.oil.volume', told: typed },
    ]);
    const keep = () => {
      const fact = {
        kind: 'drained',
        what: waste,
        value: form.value('value').trim(),
        job: this.job.record.id,
        signs: { circuit },
      };
      return form.keep(form.value('of'), fact, { say: 'books.kept' });
    };
    return html`<article class="sheet">
      <h3>${t(role)}: ${text(volume?.[0])}</h3>
      <p>${t(kind)}</p>
      ${
        fit.length
          ? html`${over ? html`<p class="book-warn">${t('books.oil.over', { over: over[0] })}</p>` : nothing}
            ${form.draw('books.oil.pour-in', keep)}`
          : html`<p>${t('books.oil.no-can')}</p>
              <p>
                <a class="button quiet" href=${address('books', 'oil')}>${t('books.oil.look')}</a>
              </p>`
      }
    </article>`;
  }

  /** What the plan laid out, and what of it is on the shelf. */
  #used() {
    const [{ lines = [] } = {}] = this.shelf.answer.lists ?? [];
    return html`${lines.map((line) => this.#line(line))}
      <p>
        <a class="button quiet" href=${address('books', 'shelf')}>${t('books.shelf.look')}</a>
      </p>`;
  }

  /** @param {WantedLine} line */
  #line(line) {
    const done = line.state === 'shelf-line.done';
    const may = [...(line.picks ?? []), ...(line.others ?? [])];
    return html`<article class="sheet">
      ${wanted(line)} ${done ? nothing : may.map((pick) => this.#take(line, pick))}
    </article>`;
  }

  /**
   * @param {WantedLine} line
   * @param {ShelfPick} pick
   */
  #take({ key, what, needs }, { item, name = '', typed }) {
    const form = new Form(this.shelf, `job ${this.job.record.id} ${key} ${item}`, [
      {
        name: 'value',
        word: what === 'oil' ? 'books.shelf.volume' : 'books.shelf.count',
        told: typed ?? needs?.[0] ?? '',
      },
    ]);
    const keep = () => {
      const value = form.value('value').trim();
      const fact = { kind: 'used', what: key, value, job: this.job.record.id };
      return form.keep(item, fact, { say: 'books.kept' });
    };
    return html`<h4>${verbatim(name)}</h4>
      ${form.draw('books.shelf.count-down', keep)}`;
  }

  /** The wrenches, those first that serve for a torque of the plan. */
  #wrenches() {
    const { wrenches = [] } = this.wrench.answer;
    const here = wrenches.filter(({ gone }) => !gone);
    if (!here.length) return html`<p>${t('books.wrenches.none')}</p>`;
    const sorted = [
      ...here.filter(({ serves }) => serves),
      ...here.filter(({ serves }) => !serves),
    ];
    return sorted.map((wrench) => this.#wrench(wrench));
  }

  /** @param {KeptWrench} wrench */
  #wrench({ id, name = '', scale = [], state, jobs = [], serves }) {
    const job = this.job.record.id;
    const about = `used ${id}`;
    const value = this.job.state.finished?.slice(0, 10);
    const use = () =>
      this.wrench.tell(
        about,
        id,
        { kind: 'used', job, ...(value && { value }) },
        { say: 'books.kept' },
      );
    return html`<article class="sheet">
      <h3>${verbatim(name)}</h3>
      <p>
        ${[text(scale[0]), t(serves ? 'books.wrenches.serves' : 'books.wrenches.serves-not'), t(state)].filter(Boolean).join(' · ')}
      </p>
      ${
        jobs.includes(job)
          ? html`<p>${t('books.wrenches.noted')}</p>`
          : html`<p class="entry">
              <button
                type="button"
                class="quiet"
                aria-label=${t('books.wrenches.use.of', { name: verbatim(name) })}
                @click=${use}
              >
                ${t('books.wrenches.use')}
              </button>
            </p>`
      }
      ${said('', this.wrench.found.get(about))}
    </article>`;
  }
}
