import { html, nothing } from 'lit-html';
import { roomLeft } from '../phone/storage.js';
import { deletePhotosOf } from '../store/photos.js';
import { t, text } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { more } from '../ui/lists.js';
import { size } from '../words/size.js';

const page = 20; // jobs drawn at once

/** How much space the app takes, and the photos of each job, which can be erased. */
export class Room {
  #app;
  #then;
  /** @type {StorageEstimate | null} null until it is asked */
  #left = null;
  #asked = null; // id of the job whose photos may be erased
  #shown = page;

  /** `then` is run when photos were erased. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
    this.load();
  }

  async load() {
    this.#left = await roomLeft();
    this.#app.redraw();
  }

  async #erase(job) {
    const erased = await this.#app.attempt(async () => (await deletePhotosOf(job), true));
    this.#asked = null;
    if (!erased) return;
    await this.#then();
    await this.load();
    this.#app.say(t('room.erased'));
  }

  #ask(id) {
    this.#asked = id;
    this.#app.redraw();
  }

  /** `jobs` are all jobs, `room` what the photos of each take: Map of id -> {count, bytes}. */
  draw(jobs, room) {
    const held = jobs.filter(({ id }) => room.has(id)).reverse(); // the oldest first
    const further = () => {
      this.#shown += page;
      this.#app.redraw();
    };
    return html`<p>${this.#left ? this.#used(this.#left) : nothing}</p>
      <h3>${t('room.photos')}</h3>
      ${held.length ? html`<p>${t('room.undone')}</p>` : html`<p>${t('room.none')}</p>`}
      <ul class="room">
        ${held.slice(0, this.#shown).map((job) => html`<li>${this.#line(job, room.get(job.id))}</li>`)}
      </ul>
      ${more(held.length - this.#shown, further)}`;
  }

  /** @param {StorageEstimate} left */
  #used({ usage, quota }) {
    return quota
      ? t('room.used', { used: size(usage ?? 0), quota: size(quota) })
      : t('room.unknown');
  }

  #line({ id, name, started }, { count, bytes }) {
    const date = when(started);
    const taken = t('room.line', { count, size: size(bytes) });
    return html`<p><strong>${text(name)}</strong> ${date} · ${taken}</p>
      ${
        this.#asked === id
          ? html`<p role="status">${t('room.sure')}</p>
              <p class="entry">
                <button type="button" @click=${() => this.#erase(id)}>
                  ${t('room.erase.yes')}
                </button>
                <button type="button" class="quiet" @click=${() => this.#ask(null)}>
                  ${t('room.erase.no')}
                </button>
              </p>`
          : html`<button
              type="button"
              class="quiet"
              aria-label=${t('room.erase-of', { name, date })}
              @click=${() => this.#ask(id)}
            >
              ${t('room.erase')}
            </button>`
      }`;
  }
}
