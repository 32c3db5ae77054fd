import { html, nothing } from 'lit-html';
import { loadLimits } from '../core/limits.js';
import { Draft } from './draft.js';
import { file } from '../site/data.js';
import { draftsWritten, watchDrafts } from '../store/drafts.js';
import { address, go } from '../ui/address.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';
import { entryField } from './entry.js';
import { finding } from '../ui/findings.js';
import { above, at } from './pointer.js';

/** A card being written: "#/edit" begins one, "#/edit/KEY" goes on with it. */
export async function edit([key], app) {
  await loadWordsOf('bench');
  const screen = { name: 'edit', tab: 'bikes', title: t('edit.title') };
  if (!key) {
    const start = await beginning(app);
    screen.title = t('bikes.new');
    screen.draw = start;
    return screen;
  }
  await loadLimits();
  const draft = await Draft.open(key);
  screen.close = watchDrafts(() => app.redraw());
  screen.draw = () =>
    draft ? draw(draft, () => app.redraw()) : html`<h1 tabindex="-1">${t('edit.unknown')}</h1>`;
  return screen;
}

/** The choice of what a new card begins with. */
async function beginning(app) {
  const { layouts } = await file('entries.json');
  const { bikes } = await file('bikes.json');
  let filter = 'filter-spin-on';
  const open = (made) => app.attempt(async () => go('edit', (await made).key));
  const pick = (kind) => {
    filter = kind;
    app.redraw();
  };
  const begin = (layout) =>
    open(Draft.blank(layout, filter === 'filter-none' ? '' : `edit.${filter}`));
  return () => html`
    <h1 tabindex="-1">${t('bikes.new')}</h1>
    <p>${t('edit.new.how')}</p>
    ${radios('edit.filter', 'edit', filter, ['filter-spin-on', 'filter-cartridge', 'filter-none'], pick)}
    <h2>${t('edit.layout')}</h2>
    <ul class="choices">
      ${Object.keys(layouts).map(
        (layout) =>
          html`<li>
            <button type="button" class="quiet" @click=${() => begin(layout)}>
              ${t(`layout.${layout}`)}
            </button>
          </li>`,
      )}
    </ul>
    <details class="more">
      <summary>${t('edit.copy')}</summary>
      <ul class="choices">
        ${bikes.map(
          ({ id, name, layout }) =>
            html`<li>
              <button type="button" class="quiet" @click=${() => open(Draft.copy(id))}>
                ${text(name)} · ${t(layout)}
              </button>
            </li>`,
        )}
      </ul>
    </details>
  `;
}

function draw(draft, changed) {
  const { card, sections } = draft;
  const shown = new Set(sections.flatMap(({ entries }) => entries.map((e) => e.at)));
  // What no entry shows, such as a fault of form, stands at the end.
  const others = draft.found.filter(
    ({ where }) => ![...shown].some((p) => where === p || where.startsWith(`${p}/`)),
  );
  return html`
    <header class="bar">
      <a href=${address('bike', draft.key)} class="all">${t('edit.plan')}</a>
      <span class="where"
        >${t(draft.open((p) => shown.has(p) || shown.has(above(p))) ? (draftsWritten() ? 'draft.written' : 'draft.pending') : 'edit.saved')}</span
      >
    </header>
    <h1 tabindex="-1">${text(`${card.make ?? ''} ${card.model ?? ''}`.trim() || '@edit.title')}</h1>
    <p>${t(`layout.${card.layout}`)}</p>
    <div aria-busy=${draft.busy > 0}>
      ${sections.map((section) => cardSection(draft, section, changed))}
    </div>
    <section>
      <h2>${t('edit.add')}</h2>
      <ul class="choices">
        ${draft.parts.map(
          (word) =>
            html`<li>
              <button type="button" class="quiet" @click=${() => draft.add(word).then(changed)}>
                + ${t(word)}
              </button>
            </li>`,
        )}
      </ul>
    </section>
    ${others.map(finding)}
  `;
}

function cardSection(draft, { word, at: pointer, removable, entries }, changed) {
  const place = pointer ? at(draft.card, `${pointer}/place`) : '';
  return html`<section>
    <h2>${t(word)}${place ? ` · ${text(place)}` : ''}</h2>
    ${entries.map((entry) => entryField(draft, entry, changed))}
    ${
      removable
        ? html`<button
            type="button"
            class="quiet"
            @click=${() => draft.remove(pointer).then(changed)}
          >
            ${t('edit.remove')}
          </button>`
        : nothing
    }
  </section>`;
}
