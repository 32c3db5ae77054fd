import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { deletePhoto, photosOf } from '../store/photos.js';
import { t } from '../words/catalogue.js';
import { when } from '../words/dates.js';

// The pictures of the jobs on the screen, as URLs that are let go with it.
const shelves = new WeakMap();

class Shelf {
  /** @type {Map<string, string> | null} by event id; null while they are being read */
  urls = null;
  open = null; // the photo that is enlarged
  asked = false; // whether to delete it
  #job;
  #app;
  #left = false;

  constructor(job, app) {
    this.#job = job;
    this.#app = app;
    this.load();
  }

  async load() {
    const list = await photosOf(this.#job).catch(() => []);
    if (this.#left) return;
    const before = this.urls ?? new Map();
    const urls = new Map();
    for (const { id, blob } of list) urls.set(id, before.get(id) ?? URL.createObjectURL(blob));
    for (const [id, url] of before) if (!urls.has(id)) URL.revokeObjectURL(url);
    this.urls = urls;
    this.#app.redraw();
  }

  show(photo) {
    Object.assign(this, { open: photo, asked: false });
    this.#app.redraw();
  }

  ask(asked) {
    this.asked = asked;
    this.#app.redraw();
  }

  async delete({ id }) {
    const deleted = await this.#app.attempt(async () => (await deletePhoto(this.#job, id), true));
    if (!deleted) return;
    this.show(null);
    await this.load();
    this.#app.say(t('photo.deleted'));
  }

  letGo() {
    this.#left = true; // also of what is still being read
    for (const url of this.urls?.values() ?? []) URL.revokeObjectURL(url);
  }
}

/** The pictures of a job on the screen. */
export function shelfOf(job, app) {
  if (!shelves.has(job)) shelves.set(job, new Shelf(job.record.id, app));
  return shelves.get(job);
}

/** Lets the pictures of a job go when its screen is left. */
export function letGo(job) {
  shelves.get(job)?.letGo();
  shelves.delete(job);
}

/** Some photos of a job, small; a tap enlarges one. */
export function photos(job, list, app) {
  if (!list.length) return nothing;
  const shelf = shelfOf(job, app);
  const open = list.includes(shelf.open);
  return html`<ul class="photos">
      ${list.map((photo) => html`<li>${small(photo, shelf)}</li>`)}
    </ul>
    ${open ? large(shelf.open, shelf) : nothing}`;
}

const wordOf = ({ what, word = `photo.what.${what}` }) => word;
const values = (photo) => ({ what: `@${wordOf(photo)}`, date: when(photo.time) });

function small(photo, shelf) {
  if (!shelf.urls) return nothing;
  const url = shelf.urls.get(photo.id);
  if (!url) return html`<p class="kept">${t('photo.gone', values(photo))}</p>`;
  const alt = t('photo.alt', values(photo));
  return html`<button
    type="button"
    class="quiet"
    aria-label=${t('photo.look', { alt })}
    @click=${() => shelf.show(photo)}
  >
    <img src=${url} alt="" loading="lazy" />
    <span>${t(wordOf(photo))}</span>
  </button>`;
}

// Only what stands in the page can be shown on top of it, and it does not yet.
const showOnTop = (dialog) =>
  dialog && queueMicrotask(() => dialog.isConnected && !dialog.open && dialog.showModal());

function large(photo, shelf) {
  const alt = t('photo.alt', values(photo));
  return html`<dialog
    class="photo"
    aria-label=${alt}
    @close=${() => shelf.show(null)}
    ${ref(showOnTop)}
  >
    <img src=${shelf.urls.get(photo.id) ?? ''} alt=${alt} />
    <p>${t(wordOf(photo))}, ${when(photo.time)}</p>
    ${shelf.asked ? html`<p role="status">${t('photo.delete.sure')}</p>` : nothing}
    <p class="entry">
      ${
        shelf.asked
          ? html`<button type="button" @click=${() => shelf.delete(photo)}>
                ${t('photo.delete.yes')}
              </button>
              <button type="button" class="quiet" @click=${() => shelf.ask(false)}>
                ${t('photo.delete.no')}
              </button>`
          : html`<button type="button" @click=${() => shelf.show(null)}>${t('photo.close')}</button>
              <button type="button" class="quiet" @click=${() => shelf.ask(true)}>
                ${t('photo.delete')}
              </button>`
      }
    </p>
  </dialog>`;
}
