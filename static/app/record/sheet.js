import { html, nothing } from 'lit-html';
import { own } from '../site/own.js';
import { bikeName } from '../store/bike-name.js';
import { set, settings } from '../store/settings.js';
import { day, when } from '../words/dates.js';
import { loadWordsOf, t, text, verbatim } from '../words/catalogue.js';
import { ticks } from '../ui/choice.js';
import { finding } from '../ui/findings.js';
import { marks } from '../ui/figure.js';
import { closed, oilLine, readings } from './sheet-done.js';
import { found } from './sheet-found.js';
import { fitted, roomFor } from '../ui/letters.js';
import { openJob } from '../plain/open.js';
import { paper } from '../ui/paper.js';
import { section } from '../ui/section.js';
import { letGo, shelfOf } from '../photos/photos.js';
import { visitOf } from '../visit/state.js';
import { visitOnSheet } from '../visit/on-sheet.js';

const doneByLetters = 300; // a name and how to reach it: more would push the sheet onto a second page

/** "#/sheet/JOB": one page about a job for the owner of the bike. */
export async function sheet([id], app) {
  await loadWordsOf('paper');
  await Promise.all(['bench', 'keep'].map(loadWordsOf)); // for what came out, and photos
  const { job, plain } = await openJob(id, app);
  const screen = { name: 'sheet', tab: 'record', title: t('paper.owner') };
  if (!job) return Object.assign(screen, plain);
  const shown = { photos: false, persons: true, visits: await visitsOf(job, app) };
  screen.close = () => letGo(job);
  screen.draw = () =>
    paper(
      `${nameOf(job, shown)} ${day(job.state.finished || job.record.started)}`,
      above(job, shown, app),
      content(job, shown, app),
      app,
    );
  return screen;
}

/** The visit of a job, as it is read with persons and without, for whoever works for others. */
async function visitsOf(job, app) {
  if (!settings.forOthers) return undefined;
  await loadWordsOf('visit');
  const [all, rest] =
    (await app.attempt(() => Promise.all([visitOf(job), visitOf(job, false)]))) ?? [];
  return all && { all, rest };
}

const above = ({ state, bike }, shown, app) => html`
  <h1 tabindex="-1">${t('paper.owner')}</h1>
  ${state.finished ? nothing : html`<p class="must">${t('paper.open')}</p>`}
  <label for="done-by">${t('paper.by')} <small>${t('paper.by.hint')}</small></label>
  <textarea
    id="done-by"
    rows="3"
    .value=${settings.doneBy}
    @input=${({ target }) => fitted(target)}
    @change=${({ target }) => app.attempt(() => set('doneBy', target.value)).then(() => app.redraw())}
  ></textarea>
  ${roomFor('done-by', doneByLetters)}
  ${
    tellsOfPersons(bike) || shown.visits
      ? ticks(
          'paper.persons',
          [
            {
              label: t(shown.visits ? 'visit.paper.persons' : 'paper.persons.print'),
              on: shown.persons,
            },
          ],
          (_, on) => {
            shown.persons = on;
            app.redraw();
          },
        )
      : nothing
  }
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

function content(job, shown, app) {
  const { record, state, plan } = job;
  const { finished, missing = [] } = state;
  return html`
    <header>
      <h1>${text(nameOf(job, shown))}</h1>
      ${shown.persons ? persons(job.bike) : nothing}
      <p>
        ${t(finished ? 'paper.finished' : 'paper.started')} ${when(finished || record.started)}
        ${odometer(state)}
      </p>
      ${settings.doneBy ? html`<p class="lines">${t('paper.by')}: ${verbatim(settings.doneBy)}</p>` : nothing}
    </header>
    ${section('paper.due', due(state), job.record.card.interval)}
    ${visitOnSheet(shown.persons ? shown.visits?.all : shown.visits?.rest)}
    ${section(
      'paper.oil',
      plan.oils.map((oil) => oilLine(oil, job)),
    )}
    ${section(
      'paper.closed',
      closed(job),
      plan.bolts?.some(({ today }) => today),
    )}
    <div class="two">
      ${section(
        'paper.readings',
        readings(state),
        state.readings?.some(({ stands, what }) => stands && what !== 'torque'),
      )}
      ${section('paper.parts', parts(plan), plan.parts)}
    </div>
    ${section('paper.found', found(job))} ${section('paper.watch', watch(state))}
    ${section('paper.missing', html`<p>${missing.map((step) => name(job.step(step))).join('; ')}</p>`, missing.length)}
    ${section('record.passed', html`<p>${state.passed?.map((step) => name(job.step(step))).join('; ')}</p>`, state.passed)}
    ${section('record.photos', pictures(job, app), shown.photos)}
    <footer>
      <p>${t('paper.no-promise')} ${t('paper.standing', { marks: marks() })}</p>
      ${shown.visits?.all.signatures ? nothing : html`<p class="sign">${t('paper.sign')}</p>`}
    </footer>
  `;
}

const ofPersons = /** @type {const} */ ([
  ['paper.plate', 'plate'],
  ['paper.frame', 'frame'],
  ['paper.of', 'owner'],
  ['paper.reach', 'reach'],
]);

const tellsOfPersons = (bike) => ofPersons.some(([, member]) => own(bike ?? {}, member));

/** What tells whose the bike is, where the sheet may say it. */
const persons = (bike) =>
  tellsOfPersons(bike)
    ? html`<p class="lines">
        ${ofPersons.map(([word, member]) => (own(bike, member) ? html`${t(word)}: ${verbatim(own(bike, member))}<br />` : nothing))}
      </p>`
    : nothing;

/** What the bike is called, without its plate where persons are left out. */
const nameOf = ({ bike, name: whole, record }, { persons: told }) =>
  told ? whole : bikeName(bike && { ...bike, plate: undefined }, record.name);

const name = ({ word, values }) => t(word, values);

const odometer = ({ summary }) =>
  summary.odometer ? html`· ${t('paper.odometer')} ${text(summary.odometer)}` : nothing;

const parts = (plan) =>
  html`<ul>
    ${plan.parts?.map(({ word, values, count }) => html`<li>${count > 1 ? t('plan.count', { count }) : nothing} ${t(word, values)}</li>`)}
  </ul>`;

const watched = ['paper.watch.floor', 'paper.watch.level', 'paper.watch.lamp'];

/** What to watch from now on; of a bike that is not to be ridden, what to do about it. */
const watch = ({ findings: doubts = [], actions = [], summary: { stop } }) => html`
  ${doubts.filter(({ code }) => code !== 'finished-without').map(finding)}
  <ul>
    ${[...actions, ...(stop ? [] : watched)].map((word) => html`<li>${t(word)}</li>`)}
  </ul>
`;

/** When the oil is due again, by the card. */
function due({ change: { at, after: time, day: by }, dueAgain, summary }) {
  if (summary.home) return html`<p>${t('finding.home-only')}</p>`;
  const when = by ?? time;
  if (!at && !when) return html`<p>${t('not-known')}</p>`;
  return html`<p class="next">
    ${at ? html`<strong class="large">${text(at)}</strong>` : nothing}
    ${when ? html`<strong class="large">${text(when)}</strong>` : nothing}
    ${at && when ? html`<span>${t('paper.due.first')}</span>` : nothing}
    ${by || !time ? nothing : html`<span>${t('paper.due.after')}</span>`}
    ${at && by && !dueAgain ? html`<span>${t('paper.due.distance-after')}</span>` : nothing}
  </p>`;
}

/** The photos that were not deleted, each with what it shows. */
const pictures = (job, app) =>
  html`<div class="pictures">
    ${(job.state.photos ?? []).map(({ id, what }) => {
      const url = shelfOf(job, app).urls?.get(id);
      return url ? html`<img src=${url} alt=${t(`photo.what.${what}`)} />` : nothing;
    })}
  </div>`;
