import { html, nothing } from 'lit-html';
import { shrink } from '../photos/shrink.js';
import { photosOf } from '../store/photos.js';
import { askToKeep } from '../store/promise.js';
import { t } from '../words/catalogue.js';

/** The pictures of receipts: those in the store, and one that is chosen and not kept yet. */
export class Receipts {
  /** @type {Map<string, string>} by can and entry: URLs, which are let go with the screen */
  #urls = new Map();
  /** @type {Map<string, { what: string, blob: Blob, bytes: number }>} by form */
  #chosen = new Map();
  #said = new Map();
  #app;
  #left = false;

  constructor(app) {
    this.#app = app;
  }

  /** @param {string[]} cans */
  async load(cans) {
    for (const can of cans) {
      const list = await photosOf(can).catch(() => []);
      if (this.#left) return;
      for (const { id, blob } of list)
        if (!this.#urls.has(`${can} ${id}`))
          this.#urls.set(`${can} ${id}`, URL.createObjectURL(blob));
    }
    this.#app.redraw();
  }

  close() {
    this.#left = true; // also of what is still being read
    for (const url of this.#urls.values()) URL.revokeObjectURL(url);
  }

  /** The picture of an entry; nothing where there is none. */
  draw(can, id) {
    const url = this.#urls.get(`${can} ${id}`);
    return url ? html`<img class="receipt" src=${url} alt=${t('books.oil.receipt')} />` : nothing;
  }

  chosen = (about) => this.#chosen.get(about);

  /** What was chosen is kept now, with its entry. */
  taken(about, can) {
    if (this.#chosen.delete(about)) askToKeep();
    this.#said.delete(about);
    return this.load([can]);
  }

  async #take(about, file) {
    const say = (word) => {
      this.#said.set(about, word);
      this.#app.redraw();
    };
    say('photo.keeping');
    try {
      const blob = await shrink(file);
      this.#chosen.set(about, { what: 'receipt', blob, bytes: blob.size });
      say('books.oil.receipt.chosen');
    } catch {
      say('photo.unreadable');
    }
  }

  /** The way to take or choose one. */
  choose(about) {
    const said = this.#said.get(about);
    return html`<p><strong>${t('books.oil.receipt')}</strong></p>
      <div class="entry">${this.#source('camera', about)} ${this.#source('choose', about)}</div>
      <p role="status" class="told">${said ? t(said) : nothing}</p>`;
  }

  #source(way, about) {
    const id = `receipt-${way}-${about}`.replaceAll(/[^\w-]/g, '-');
    const camera = way === 'camera';
    const picked = ({ target }) => {
      const [file] = target.files;
      target.value = '';
      if (file) this.#take(about, file);
    };
    return html`<span class="file">
      <input
        id=${id}
        type="file"
        accept="image/*"
        capture=${camera ? 'environment' : nothing}
        @change=${picked}
      />
      <label for=${id} class="button quiet">${t(camera ? 'photo.camera' : 'photo.choose')}</label>
    </span>`;
  }
}
