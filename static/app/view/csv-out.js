import { html, nothing } from 'lit-html';
import { table } from '../due/table.js';
import { save } from '../hand-out.js';
import { loadWordsOf, t } from '../words.js';
import { radios } from './choice.js';

/** The part of the record that saves it as a table for a spreadsheet. */
export class CsvOut {
  #form = 'point';
  #working = '';

  constructor(jobs, app) {
    this.jobs = jobs;
    this.app = app;
  }

  /** Opens it with the words that it is drawn with. */
  static async open(jobs, app) {
    await app.keep(() => loadWordsOf('due'));
    return new CsvOut(jobs, app);
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

  #tell = (done) => {
    this.#working = t('csv.working', { done, count: this.jobs.length });
    this.app.redraw();
  };

  async #save() {
    this.#tell(0);
    const saved = await this.app.keep(async () => {
      save(await table(this.jobs, this.#form === 'comma', this.#tell));
      return true;
    }, 'csv.failed');
    this.#working = '';
    this.app.say(saved ? t('csv.saved') : '');
  }
}
