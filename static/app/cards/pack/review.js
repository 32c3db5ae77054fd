import { html, nothing } from 'lit-html';
import { t } from '../../words/catalogue.js';
import { bikeFacts } from '../../bikes/bike-line.js';
import { ownFacts } from '../../bikes/own-facts.js';
import { more } from '../../ui/lists.js';
import { finding } from '../../ui/findings.js';
import { own } from '../../site/own.js';

const page = 50; // cards drawn at once
const findingsEach = 5; // about one card

/** What a pack holds, card by card, before anything is kept. */
export function review(entries, app, keep, leave) {
  const taken = entries.filter((entry) => entry.taken).length;
  return html`
    <h1 tabindex="-1">${t('pack.title')}</h1>
    <p>${t('pack.nothing-yet')}</p>
    <p>
      <button type="button" class="quiet" @click=${leave}>${t('pack.leave')}</button>
    </p>
    ${['new', 'changed', 'refused', 'same'].map((status) =>
      group(
        status,
        entries.filter((entry) => entry.status === status),
        app,
      ),
    )}
    <div class="actions">
      <button type="button" class="main" ?disabled=${!taken} @click=${keep}>
        ${t('pack.keep', { count: taken })}
      </button>
    </div>
  `;
}

const choosable = { new: true, changed: true };

function group(status, list, app) {
  if (!list.length) return nothing;
  const tick = (taken) => {
    for (const entry of list) entry.taken = taken;
    app.redraw();
  };
  const further = () => {
    list[0].shown = shown + page;
    app.redraw();
  };
  const shown = list[0].shown ?? page;
  return html`<section>
    <h2>${t(`pack.${status}`)} (${list.length})</h2>
    <p>${t(`pack.${status}.why`)}</p>
    ${
      own(choosable, status) && list.length > 1
        ? html`<p class="entry">
            <button type="button" class="quiet" @click=${() => tick(true)}>${t('pack.all')}</button>
            <button type="button" class="quiet" @click=${() => tick(false)}>
              ${t('pack.none')}
            </button>
          </p>`
        : nothing
    }
    <ul class="bikes cards">
      ${list.slice(0, shown).map((entry) => html`<li>${line(entry, app)}</li>`)}
    </ul>
    ${more(list.length - shown, further)}
  </section>`;
}

function line(entry, app) {
  const { bike, status, findings, number } = entry;
  const found = html`<div class="findings">
    ${findings.slice(0, findingsEach).map(finding)}
    ${
      findings.length > findingsEach
        ? html`<p>${t('pack.further', { count: findings.length - findingsEach })}</p>`
        : nothing
    }
  </div>`;
  if (!bike)
    return html`<div class="told"><strong>${t('pack.card', { number })}</strong>${found}</div>`;
  if (!own(choosable, status))
    return html`<div class="facts">${bikeFacts({ bike }, { own: ownFacts({ bike }) })}</div>`;
  const tick = ({ target }) => {
    entry.taken = target.checked;
    app.redraw();
  };
  return html`<label class="pick">
      <input type="checkbox" .checked=${entry.taken} @change=${tick} />
      <span class="facts">${bikeFacts({ bike }, { own: ownFacts({ bike }) })}</span>
    </label>
    ${findings.length ? found : nothing}`;
}
