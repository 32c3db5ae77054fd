import { html, nothing } from 'lit-html';
import { table } from './csv.js';
import { download } from '../phone/share.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { radios, ticks } from '../ui/choice.js';
import { bikeRows } from '../store/store.js';

/** The section of the record that saves it as a table for a spreadsheet. */
export class CsvForm {
  #form = 'point';
  #plates = true;
  #some = false; // a plate is told of a bike
  #working = '';

  constructor(jobs, app) {
    this.jobs = jobs;
    this.app = app;
  }

  /** Opens it with the words that it is drawn with. */
  static async open(jobs, app) {
    await app.attempt(() => loadWordsOf('due'));
    const form = new CsvForm(jobs, app);
    const bikes = await bikeRows().catch(() => []); // as for the jobs, it is told where they are
    form.#some = bikes.some(({ plate }) => plate);
    return form;
  }

  draw() {
    if (!this.jobs.length) return nothing;
    const pick = (form) => {
      this.#form = form;
      this.app.redraw();
    };
    return html`<details>
      <summary>${t('csv.export')}</summary>
      <p>${t('csv.why')}</p>
      ${radios('csv.form', 'csv.form', this.#form, ['point', 'comma'], pick)}
      ${this.#some ? this.#whether() : nothing}
      <p class="entry">
        <button type="button" ?disabled=${Boolean(this.#working)} @click=${() => this.#save()}>
          ${t('csv.save')}
        </button>
        <span role="status">${this.#working}</span>
      </p>
    </details>`;
  }

  /** Whether the plates go with it: who gives the table to others may not want that. */
  #whether() {
    const lines = [{ label: t('csv.plates'), on: this.#plates }];
    return ticks('csv.persons', lines, (_, on) => (this.#plates = on));
  }

  #progress = (done) => {
    this.#working = t('csv.working', { done, count: this.jobs.length });
    this.app.redraw();
  };

  async #save() {
    this.#progress(0);
    const saved = await this.app.attempt(async () => {
      const how = { comma: this.#form === 'comma', plates: this.#plates };
      download(await table(this.jobs, how, this.#progress));
      return true;
    }, 'csv.failed');
    this.#working = '';
    this.app.say(saved ? t('csv.saved') : '');
  }
}
