import { html, nothing } from 'lit-html';
import { table } from './csv.js';
import { download } from '../phone/share.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';

/** The section of the record that saves it as a table for a spreadsheet. */
export class CsvForm {
  #form = 'point';
  #working = '';

  constructor(jobs, app) {
    this.jobs = jobs;
    this.app = app;
  }

  /** Opens it with the words that it is drawn with. */
  static async open(jobs, app) {
    await app.attempt(() => loadWordsOf('due'));
    return new CsvForm(jobs, app);
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
      <p class="entry">
        <button type="button" ?disabled=${Boolean(this.#working)} @click=${() => this.#save()}>
          ${t('csv.save')}
        </button>
        <span role="status">${this.#working}</span>
      </p>
    </details>`;
  }

  #progress = (done) => {
    this.#working = t('csv.working', { done, count: this.jobs.length });
    this.app.redraw();
  };

  async #save() {
    this.#progress(0);
    const saved = await this.app.attempt(async () => {
      download(await table(this.jobs, this.#form === 'comma', this.#progress));
      return true;
    }, 'csv.failed');
    this.#working = '';
    this.app.say(saved ? t('csv.saved') : '');
  }
}
