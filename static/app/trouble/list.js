import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { finder } from '../ui/lists.js';
import { find, namesOf, wordsOf } from './find.js';

/** The problems by what one sees, and the search among them. */
export class TroubleList {
  typed = '';

  constructor({ faults }, to, app) {
    this.app = app;
    this.to = to;
    /** @type {{ id: string, group: string, words: Set<string> }[]} */
    this.rows = faults.map(({ id, group }) => ({
      id,
      group,
      words: namesOf(t(`fault.${id}`), t(`fault.${id}.also`)),
    }));
  }

  draw() {
    const { fits, near } = this.#found();
    const shown = fits.length ? fits : this.rows; // nothing found is no dead end
    const groups = [...new Set(shown.map(({ group }) => group))];
    const type = (typed) => {
      this.typed = typed;
      this.app.redraw();
    };
    return html`
      ${finder(this.typed, type, 'trouble.search')}
      <p role="status" class=${this.#typedWords ? '' : 'hidden'}>
        ${this.#typedWords ? said(fits.length, near) : nothing}
      </p>
      ${groups.map((group) => this.#group(group, shown))}
    `;
  }

  get #typedWords() {
    return wordsOf(this.typed).length;
  }

  #found() {
    return this.#typedWords ? find(this.rows, this.typed) : { fits: this.rows, near: false };
  }

  #group(group, rows) {
    return html`<section class="stage-steps">
      <h2>${t(`fault-group.${group}`)}</h2>
      <ol>
        ${rows
          .filter((row) => row.group === group)
          .map(({ id }) => html`<li><a href=${this.to(id)}>${t(`fault.${id}`)}</a></li>`)}
      </ol>
    </section>`;
  }
}

function said(count, near) {
  if (!count) return t('trouble.none');
  return near ? t('trouble.near') : t('trouble.fitting', { count });
}
