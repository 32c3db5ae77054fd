import { html, nothing } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { loadLimits } from '../core/limits.js';
import { Draft } from './draft.js';
import { file } from '../site/data.js';
import { draftsWritten, watchDrafts } from '../store/drafts.js';
import { address, go } from '../ui/address.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';
import { entryField, idOf } from './entry.js';
import { textsOf } from '../ui/figure.js';
import { finding } from '../ui/findings.js';
import { plate } from '../plan/plate.js';
import { above, at } from './pointer.js';
import { textOf } from './sections.js';

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
  let filter = 'filter-unknown';
  const open = (made) => app.attempt(async () => go('edit', (await made).key));
  const pick = (kind) => {
    filter = kind;
    app.redraw();
  };
  const begin = (layout) =>
    open(Draft.blank(layout, filter === 'filter-none' ? '' : `edit.${filter}`));
  return () => html`
    <h1 tabindex="-1">${t('bikes.new')}</h1>
    <p><a class="button" href=${address('manual')}>${t('edit.paste')}</a></p>
    <p>${t('edit.new.how')}</p>
    ${radios('edit.filter', 'edit', filter, ['filter-unknown', 'filter-spin-on', 'filter-cartridge', 'filter-none'], pick)}
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

// What a card is called by, and where its figures come from: without these there is no plan.
const names = ['/make', '/model', '/sources/0/title'];

function draw(draft, changed) {
  const { card, sections } = draft;
  const all = sections.flatMap(({ entries }) => entries);
  const shown = new Set(all.map((e) => e.at));
  const front = [...names, ...draft.first].flatMap(
    (place) => all.find((e) => e.at === place) ?? [],
  );
  // What no entry shows, such as a fault of form, stands at the end.
  const others = draft.found.filter(
    ({ where }) => ![...shown].some((p) => where === p || where.startsWith(`${p}/`)),
  );
  const open = draft.open((p) => shown.has(p) || shown.has(above(p)));
  const state = open ? (draftsWritten() ? 'draft.written' : 'draft.pending') : 'edit.saved';
  return html`
    <header class="bar" data-bar>
      <a href=${address('bike', draft.key)} class="all">${t('edit.plan')}</a>
      ${plateLine(draft.plate)}
    </header>
    <h1 tabindex="-1">${text(`${card.make ?? ''} ${card.model ?? ''}`.trim() || '@edit.title')}</h1>
    <p>${t(`layout.${card.layout}`)} <small class="where">${t(state)}</small></p>
    <p>
      <a class="button quiet" href=${address('manual', draft.key)}>${t('edit.paste')}</a>
    </p>
    <div class="beside">
      <div aria-busy=${draft.busy > 0}>
        <section>
          <h2>${t('edit.first')}</h2>
          ${repeat(
            front,
            (entry) => entry.at,
            (entry, n) =>
              html`${heading(partOf(sections, entry), partOf(sections, front[n - 1]))}${entryField(draft, entry, changed)}`,
          )}
        </section>
        ${repeat(
          sections,
          ({ at: pointer, word }) => (pointer ? idOf('part', draft, pointer) : word),
          (section) => cardSection(draft, section, front, changed),
        )}
      </div>
      <aside class="stays" aria-label=${t('edit.plate')}>${plateOf(draft.plate)}</aside>
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

/** The plate of the plan, as far as it is known what it shows. */
const plateOf = (figures) =>
  figures.length ? plate(figures) : html`<p>${t('edit.plate.none')}</p>`;

const mostInLine = 2; // figures, which stand in one line of a phone

/** Where the plate has no room beside the form: what is known of it in a line, which opens. */
function plateLine(figures) {
  const known = figures.filter(
    (f) => f.standing !== 'unknown' && f.standing !== 'estimated' && !f.words,
  );
  const texts = known.slice(0, mostInLine).map((figure) => textsOf(figure)[0]);
  return html`<details class="plate-line">
    <summary>
      <span class="hidden">${t('edit.plate')}</span> ${texts.join(' · ') || t('edit.plate')}
    </summary>
    <div>${plateOf(figures)}</div>
  </details>`;
}

/** The word of the part of the bike that an entry of the first page belongs to, if of any. */
const partOf = (sections, entry) =>
  sections.find(({ at: base }) => base && entry?.at.startsWith(`${base}/`))?.word;

/** What stands above an entry with which another group begins. */
const heading = (word, before) =>
  word && word !== before ? html`<h3 class="of-part">${t(word)}</h3>` : nothing;

/** A fold: its name, and how much of it is written in. It opens where something is found. */
function cardSection(draft, section, front, changed) {
  const { word, at: pointer, removable } = section;
  const entries = section.entries.filter((e) => !front.includes(e));
  const place = pointer ? at(draft.card, `${pointer}/place`) : '';
  const known = entries.filter((e) => textOf(draft.card, e)).length;
  const told = ({ at: entry }) =>
    draft.unread.has(entry) ||
    draft.standing(entry) ||
    draft.found.some(({ where }) => where === entry || where.startsWith(`${entry}/`));
  const fold = pointer ?? word;
  if (entries.some(told)) draft.unfolded.add(fold); // open once, it does not fold up under the fingers
  const toggle = ({ target }) =>
    target.open ? draft.unfolded.add(fold) : draft.unfolded.delete(fold);
  return html`<details class="fold" ?open=${draft.unfolded.has(fold)} @toggle=${toggle}>
    <summary>
      <h2>${t(word)}${place ? ` · ${text(place)}` : ''}</h2>
      <span>${t('edit.known', { known, count: entries.length })}</span>
    </summary>
    ${repeat(
      entries,
      (entry) => `${entry.at} ${entry.word}`,
      (entry, n) =>
        html`${heading(entry.group, entries[n - 1]?.group)}${entryField(draft, entry, changed)}`,
    )}
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
  </details>`;
}
