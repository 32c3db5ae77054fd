import { html, nothing } from 'lit-html';
import { costsOf } from '../bill/costs.js';
import { call } from '../core/client.js';
import { address } from '../ui/address.js';
import { factsOf } from '../store/facts.js';
import { Job } from '../store/job.js';
import { settings } from '../store/settings.js';
import { log } from '../store/store.js';
import { watchFacts } from '../store/windows.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { clock, today, when } from '../words/dates.js';
import { short } from '../ui/lists.js';
import { amount } from './amount.js';

const days = 60; // a bike whose work was done longer ago is found in the record
const day = 24 * 3600 * 1000; // ms

/** "#/visits": the bikes of customers that are here, or were handed over today. */
export async function visits(_, app) {
  await Promise.all(['visit', 'bill', 'hands'].map(loadWordsOf));
  /** @type {any} */
  const list = { names: new Map(), timers: new Map() };
  const load = () => app.attempt(() => read(list)).then(() => app.redraw());
  await load();
  const unfollow = watchFacts('visit', undefined, load);
  return {
    name: 'visits',
    tab: 'bikes',
    title: t('visits.title'),
    draw: () => draw(list),
    close: unfollow,
  };
}

/** Reads the visits of the jobs under way, and of those done of late; the core sorts them. */
async function read(list) {
  const since = new Date(Date.now() - days * day).toISOString();
  const lines = (await log()).filter(
    ({ summary }) => !summary.finished || summary.finished > since,
  );
  const facts = await Promise.all(lines.map(({ id }) => factsOf('visit', id)));
  const told = lines
    .map((line, n) => ({ line, facts: facts[n] }))
    .filter((visit) => visit.facts.length);
  const given = await Promise.all(told.map((visit) => input(visit, list)));
  const now = new Date();
  const clock = now.toTimeString().slice(0, 5);
  list.answer = (await call('visits', { visits: given, now: `${today(now)}T${clock}` })).ok;
}

/** What the core is told of a visit; of a job under way with what it costs and its timers. */
async function input({ line, facts }, list) {
  const { id, name, summary } = line;
  const job = summary.finished ? undefined : await Job.open(id);
  const timers = job?.state?.timers ?? [];
  list.names.set(id, name);
  list.timers.set(id, timers);
  const costs = job?.state && (await costsOf(/** @type {any} */ (job)));
  return {
    id,
    facts,
    system: settings.system,
    total: costs?.minor,
    currency: costs?.currency,
    started: Boolean(summary.done),
    finished: Boolean(summary.finished),
    timers: timers.map(({ until }) => until),
  };
}

function draw(list) {
  const { answer } = list;
  if (!answer) return html`<h1 tabindex="-1">${t('bill.failed')}</h1>`;
  const { visits: lines = [] } = answer;
  return html`
    <h1 tabindex="-1">${t('visits.title')}</h1>
    ${next(list)}
    ${
      lines.length
        ? html`<ul class="jobs">
            ${lines.map((visit) => html`<li>${line(visit, list)}</li>`)}
          </ul>`
        : html`<p>${t('visits.none')}</p>`
    }
  `;
}

/** The timer that runs out first of all. */
function next({ answer: { next: id, until }, names, timers }) {
  const timer = timers.get(id)?.find((one) => one.until === until);
  if (!timer) return nothing;
  const values = { timer: `@timer.${timer.what}`, bike: names.get(id), clock: clock(until) };
  return html`<p>
    <a class="button quiet" href=${address('job', id, 'step', timer.step)}
      >${t('visits.timer', values)}</a
    >
  </p>`;
}

function line({ id, stage, promised, late, over, handed }, { names }) {
  const parts = [
    handed
      ? when(handed)
      : promised && t(late ? 'visits.late' : 'visit.promised', { when: when(promised) }),
    over ? t('visits.over', { more: amount(over) }) : '',
  ].filter(Boolean);
  return html`<a href=${address('visit', id)}>
    <strong>${short(names.get(id))}</strong>
    <span>${[t(`visit.stage.${stage}`), ...parts].join(' · ')}</span>
  </a>`;
}
