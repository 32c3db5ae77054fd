import { html, nothing } from 'lit-html';
import { plain, search } from '../words/search.js';
import { t } from '../words/catalogue.js';
import { finder } from '../ui/lists.js';

/** The problems by what one sees, and the search among them. */
export class TroubleList {
  typed = '';

  constructor({ faults }, to, app) {
    this.app = app;
    this.to = to;
    /** @type {{ id: string, group: string, text: string }[]} */
    this.rows = faults.map(({ id, group }) => ({
      id,
      group,
      text: plain(
        [`fault.${id}`, `fault.${id}.also`, `fault-group.${group}`].map((w) => t(w)).join(' '),
      ),
    }));
  }

  draw() {
    const fits = search(this.rows, this.typed);
    const groups = [...new Set(fits.map(({ group }) => group))];
    const find = (typed) => {
      this.typed = typed;
      this.app.redraw();
    };
    return html`
      ${finder(this.typed, find, 'trouble.search')}
      <p role="status" class=${this.typed ? '' : 'hidden'}>
        ${this.typed ? t(fits.length ? 'trouble.fitting' : 'trouble.none', { count: fits.length }) : nothing}
      </p>
      ${groups.map((group) => this.#group(group, fits))}
    `;
  }

  #group(group, fits) {
    return html`<section class="stage-steps">
      <h2>${t(`fault-group.${group}`)}</h2>
      <ol>
        ${fits
          .filter((row) => row.group === group)
          .map(({ id }) => html`<li><a href=${this.to(id)}>${t(`fault.${id}`)}</a></li>`)}
      </ol>
    </section>`;
  }
}
