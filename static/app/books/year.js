import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { download } from '../phone/share.js';
import { settings } from '../store/settings.js';
import { radios } from '../ui/choice.js';
import { paper } from '../ui/paper.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { dayText } from '../words/dates.js';

/** @import { OilYear } from '../core/core.d.ts' */

const columns = [
  'books.day',
  'books.oil.kind',
  'books.oil.volume',
  'books.oil.where',
  'books.oil.name',
];
const kinds = ['text', 'text', 'volume', 'text', 'text'];

/** What was handed in in a year, to print or to save as a table. */
export class YearTable {
  #form = 'point';
  #year;
  #app;
  #receipts;

  /**
   * @param {OilYear} year
   * @param {any} app
   * @param {import('./receipts.js').Receipts} receipts
   */
  constructor(year, app, receipts) {
    this.#year = year;
    this.#app = app;
    this.#receipts = receipts;
  }

  get title() {
    return t('books.oil.year', { year: String(this.#year.year) });
  }

  draw() {
    const above = html`<h1 tabindex="-1">${this.title}</h1>
      ${radios('csv.form', 'csv.form', this.#form, ['point', 'comma'], (form) => {
        this.#form = form;
        this.#app.redraw();
      })}
      <p class="entry">
        <button type="button" class="quiet" @click=${() => this.#save()}>${t('books.csv')}</button>
      </p>`;
    return paper(this.title, above, this.#sheet(), this.#app);
  }

  #sheet() {
    const { sums = [], rows = [] } = this.#year;
    return html`<h1>${this.title}</h1>
      <table class="money">
        <thead class="hidden">
          <tr>
            ${columns.slice(0, 3).map((word) => html`<th scope="col">${t(word)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map((row) => this.#row(row))}
        </tbody>
        <tbody class="sums">
          ${sums.map(
            ({ kind, volume }) =>
              html`<tr class="total">
                <th scope="row">${t('books.oil.sum', { kind: `@${kind}` })}</th>
                <td>${text(volume?.[0])}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${rows.map(({ can, id }) => this.#receipts.draw(can, id))}`;
  }

  #row({ day, kind, volume, place, name }) {
    const where = [place, name].filter(Boolean).map(verbatim).join(' · ');
    return html`<tr>
      <td>${dayText(day)} · ${t(kind)} ${where ? html`<small>${where}</small>` : nothing}</td>
      <td>${text(volume?.[0])}</td>
    </tr>`;
  }

  async #save() {
    const { rows = [], year } = this.#year;
    const cells = [
      columns.map((word) => t(word)),
      ...rows.map(({ day, kind, litres = 0, place = '', name = '' }) => [
        day,
        t(kind),
        String(litres),
        place,
        name,
      ]),
    ].flat();
    const { system } = settings;
    const { ok } = await call('csv', { system, comma: this.#form === 'comma', kinds, cells });
    if (!ok?.text) return this.#app.say(t('csv.failed'));
    const name = `tidysump-old-oil-${year}.csv`;
    download(new File([`\ufeff${ok.text}`], name, { type: 'text/csv' }));
    this.#app.say(t('csv.saved'));
  }
}
