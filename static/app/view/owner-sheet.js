import { html, nothing } from 'lit-html';
import { Job } from '../job.js';
import { set, settings } from '../settings.js';
import { day, loadWordsOf, t, text, when } from '../words.js';
import { ticks } from './choice.js';
import { finding, findings, marks } from './figure.js';
import { closed, oilOf } from './owner-done.js';
import { found } from './owner-found.js';
import { paper } from './paper.js';
import { part } from './part.js';
import { letGo, shelfOf } from './photos.js';

/** "#/sheet/JOB": one page about a job for the owner of the bike. */
export async function ownerSheet([id], app) {
  await loadWordsOf('paper');
  await Promise.all(['bench', 'keep'].map(loadWordsOf)); // for what came out, and photos
  const work = await app.keep(() => Job.open(id));
  const screen = { name: 'sheet', tab: 'record', title: t('paper.owner') };
  const shown = { photos: false };
  screen.close = () => letGo(work);
  screen.draw = () =>
    work?.state
      ? paper(
          `${work.record.name} ${day(work.state.finished || work.record.started)}`,
          above(work, shown, app),
          sheet(work, shown, app),
          app,
        )
      : html`<h1 tabindex="-1">${t('job.unknown')}</h1>
          ${findings(work?.findings)}`;
  return screen;
}

const above = ({ state }, shown, app) => html`
  <h1 tabindex="-1">${t('paper.owner')}</h1>
  ${state.finished ? nothing : html`<p class="must">${t('paper.open')}</p>`}
  <label for="done-by">${t('paper.by')} <small>${t('paper.by.hint')}</small></label>
  <textarea
    id="done-by"
    rows="3"
    maxlength="300"
    .value=${settings.doneBy}
    @change=${({ target }) => app.keep(() => set('doneBy', target.value)).then(() => app.redraw())}
  ></textarea>
  ${
    state.photos
      ? ticks(
          'record.photos',
          [{ id: 'photos', label: t('paper.photos'), on: shown.photos }],
          (_, on) => {
            shown.photos = on;
            app.redraw();
          },
        )
      : nothing
  }
`;

function sheet(work, shown, app) {
  const { record, state, plan } = work;
  const { finished, missing = [], findings: doubts = [] } = state;
  return html`
    <header>
      <h1>${text(record.name)}</h1>
      <p>
        ${t(finished ? 'paper.finished' : 'paper.started')} ${when(finished || record.started)}
        ${odometer(state)}
      </p>
      ${settings.doneBy ? html`<p class="lines">${t('paper.by')}: ${settings.doneBy}</p>` : nothing}
    </header>
    ${part(
      'paper.oil',
      plan.oils.map((oil) => oilOf(oil, work)),
    )}
    ${part(
      'paper.closed',
      closed(work),
      plan.bolts?.some(({ today }) => today),
    )}
    ${part('paper.parts', parts(plan), plan.parts)} ${part('paper.found', found(work))}
    ${part('paper.watch', watch(doubts))}
    ${part('paper.missing', html`<p>${missing.map((step) => name(work.step(step))).join('; ')}</p>`, missing.length)}
    ${part('paper.due', due(work), work.record.card.interval)}
    ${part('record.photos', pictures(work, app), shown.photos)}
    <footer>
      <p>${t('paper.no-promise')} ${t('paper.standing', { marks: marks() })}</p>
      <p class="sign">${t('paper.sign')}</p>
    </footer>
  `;
}

const name = ({ word, values }) => t(word, values);

function odometer({ readings = [] }) {
  const read = readings.findLast(({ what }) => what === 'odometer');
  return read ? html`· ${t('paper.odometer')} ${read.texts[0]}` : nothing;
}

const parts = (plan) =>
  html`<ul>
    ${plan.parts?.map(({ word, values, count }) => html`<li>${count > 1 ? t('plan.count', { count }) : nothing} ${t(word, values)}</li>`)}
  </ul>`;

const watched = ['paper.watch.floor', 'paper.watch.level', 'paper.watch.lamp'];

const watch = (doubts) => html`
  ${doubts.map(finding)}
  <ul>
    ${watched.map((word) => html`<li>${t(word)}</li>`)}
  </ul>
`;

/** When the oil is due again, by the card. */
function due({ state, plan }) {
  const [distance, time] = ['interval-distance', 'interval-time'].map(
    (figure) =>
      plan.steps
        .find(({ word }) => word === 'step.write-down')
        ?.figures?.find((f) => f.name === `figure.${figure}`)?.texts?.[0],
  );
  const at = state.dueAgain?.texts[0] ?? distance;
  if (!at && !time) return html`<p>${t('not-known')}</p>`;
  if (!at) return html`<p>${t('paper.due.time', { time })}</p>`;
  return html`<p><strong>${at}</strong> ${time ? t('paper.due.or', { time }) : nothing}</p>`;
}

/** The photos that were not deleted, each with what it shows. */
const pictures = (work, app) =>
  html`<div class="pictures">
    ${(work.state.photos ?? []).map(({ id, what }) => {
      const url = shelfOf(work, app).urls?.get(id);
      return url ? html`<img src=${url} alt=${t(`photo.what.${what}`)} />` : nothing;
    })}
  </div>`;
