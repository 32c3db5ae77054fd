import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { finder } from '../ui/lists.js';
import { find, namesOf, wordsOf } from './find.js';

/**
 * @typedef {{ id: string, group: string, door: string, top?: boolean, at?: string[], words: Set<string> }} Row
 */

/** The problems by what one sees: four doors, what stands behind one, and the search among all. */
export class TroubleList {
  typed = '';

  /**
   * @param {{ faults: Omit<Row, 'words'>[] }} table
   * @param {{ problem: (id: string) => string, door: (door: string) => string }} to addresses
   * @param {{ redraw(): void }} app
   */
  constructor({ faults }, to, app) {
    this.app = app;
    this.to = to;
    /** @type {Row[]} */
    this.rows = faults.map(({ id, group, door, top, at }) => ({
      ...{ id, group, door, top, at },
      words: namesOf(t(`fault.${id}`), t(`fault.${id}.also`)),
    }));
    this.doors = [...new Set(this.rows.map(({ door }) => door))];
    // What can't wait stands behind the first of them.
    const first = this.rows.find(({ top }) => top)?.door ?? '';
    this.doors.sort((a, b) => Number(b === first) - Number(a === first));
  }

  /** Whether there is such a door. */
  has = (door = '') => this.doors.includes(door);

  /**
   * The doors, or what stands behind one; what is typed is looked for behind all.
   *
   * @param {{ door?: string, at?: { word: string, title: unknown } }} where the door, or the step one comes from
   */
  draw({ door, at }) {
    const type = (typed) => {
      this.typed = typed;
      this.app.redraw();
    };
    return html`
      ${finder(this.typed, type, 'trouble.search')}
      ${this.#typedWords ? this.#found() : door ? this.#behind(door) : this.#front(at)}
    `;
  }

  get #typedWords() {
    return wordsOf(this.typed).length;
  }

  #found() {
    const { fits, near } = find(this.rows, this.typed);
    return html`<p role="status">${said(fits.length, near)}</p>
      ${fits.length ? this.#groups(fits) : this.#front()}`; // nothing found is no dead end
  }

  #behind(door) {
    return html`<p role="status" class="hidden"></p>
      ${this.#groups(this.rows.filter((row) => row.door === door))}`;
  }

  /** What fits the step, what can't wait, and the doors. */
  #front(at) {
    const fitting = at ? this.rows.filter((row) => row.at?.includes(at.word)) : [];
    return html`
      ${
        fitting.length
          ? html`<section class="stage-steps fitting">
              <h2>${t('trouble.at-step', { step: at.title })}</h2>
              ${this.#lines(fitting)}
            </section>`
          : nothing
      }
      <nav class="doors" aria-label=${t('trouble.doors')}>
        ${this.#lines(this.rows.filter(({ top }) => top))}
        <ul>
          ${this.doors.map(
            (door) => html`<li><a href=${this.to.door(door)}>${t(`fault-door.${door}`)}</a></li>`,
          )}
        </ul>
      </nav>
    `;
  }

  #groups(rows) {
    return [...new Set(rows.map(({ group }) => group))].map(
      (group) =>
        html`<section class="stage-steps">
          <h2>${t(`fault-group.${group}`)}</h2>
          ${this.#lines(rows.filter((row) => row.group === group))}
        </section>`,
    );
  }

  #lines = (rows) =>
    html`<ol>
      ${rows.map(({ id }) => html`<li><a href=${this.to.problem(id)}>${t(`fault.${id}`)}</a></li>`)}
    </ol>`;
}

function said(count, near) {
  if (!count) return t('trouble.none');
  return near ? t('trouble.near') : t('trouble.fitting', { count });
}
