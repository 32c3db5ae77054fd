import { html, nothing } from 'lit-html';
import { shrink } from '../photos/shrink.js';
import { deletePhoto, photosOf } from '../store/photos.js';
import { askToKeep } from '../store/promise.js';
import { said } from '../ui/said.js';
import { t } from '../words/catalogue.js';

/** The photos of a bike: those that tell it from its twin, as it looked when it came. */
export class Pictures {
  /** @type {Map<string, string>} by id: URLs, which are let go with the screen */
  #urls = new Map();
  #telling;
  #app;
  #left = false;
  #busy = '';

  constructor(telling, app) {
    this.#telling = telling;
    this.#app = app;
    this.#load();
  }

  async #load() {
    const list = await photosOf(this.#telling.id).catch(() => []);
    if (this.#left) return;
    for (const { id, blob } of list)
      if (!this.#urls.has(id)) this.#urls.set(id, URL.createObjectURL(blob));
    this.#app.redraw();
  }

  close() {
    this.#left = true; // also of what is still being read
    for (const url of this.#urls.values()) URL.revokeObjectURL(url);
  }

  #say(word) {
    this.#busy = word;
    this.#app.redraw();
  }

  async #take(file) {
    if (this.#busy === 'photo.keeping') return;
    this.#say('photo.keeping');
    let blob;
    try {
      blob = await shrink(file);
    } catch {
      return this.#say('photo.unreadable');
    }
    const photo = { what: 'bike', blob, bytes: blob.size };
    const kept = await this.#telling.tell('photo', { kind: 'photo', what: 'bike' }, { photo });
    if (kept) {
      askToKeep();
      await this.#load();
    }
    this.#say(kept ? 'photo.kept' : '');
  }

  /** Takes a photo back, and its picture off the phone: nobody needs the one without the other. */
  async #drop(id) {
    const telling = this.#telling;
    if (!(await telling.tell('photo', { kind: 'undo', what: id }))) return;
    await this.#app.attempt(() => deletePhoto(telling.id, id));
    URL.revokeObjectURL(this.#urls.get(id) ?? '');
    this.#urls.delete(id);
    this.#say('photo.deleted');
  }

  draw() {
    const { row, found } = this.#telling;
    const photos = row?.photos ?? [];
    return html`
      ${
        photos.length
          ? html`<ul class="photos">
              ${photos.map(({ id }, n) => html`<li>${this.#one(id, n + 1)}</li>`)}
            </ul>`
          : nothing
      }
      <div class="entry">${this.#source('camera')} ${this.#source('choose')}</div>
      <p class="kept">${t('photo.private')}</p>
      <p role="status" class="told">${this.#busy ? t(this.#busy) : nothing}</p>
      ${said('', found.get('photo'))}
    `;
  }

  #one(id, number) {
    const url = this.#urls.get(id);
    return html`${
        url
          ? html`<img src=${url} alt=${t('details.photo', { number })} loading="lazy" />`
          : html`<p class="kept">${t('details.photo.gone')}</p>`
      }
      <button
        type="button"
        class="quiet"
        aria-label=${t('details.photo.drop', { number })}
        @click=${() => this.#drop(id)}
      >
        ${t('photo.delete')}
      </button>`;
  }

  #source(way) {
    const id = `details-photo-${way}`;
    const camera = way === 'camera';
    const picked = ({ target }) => {
      const [file] = target.files;
      target.value = '';
      if (file) this.#take(file);
    };
    return html`<span class="file">
      <input
        id=${id}
        type="file"
        accept="image/*"
        capture=${camera ? 'environment' : nothing}
        @change=${picked}
      />
      <label for=${id} class=${camera ? 'button' : 'button quiet'}
        >${t(camera ? 'photo.camera' : 'photo.choose')}</label
      >
    </span>`;
  }
}
