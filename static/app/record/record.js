import { html, nothing } from 'lit-html';
import { costsOf } from '../bill/costs.js';
import { marksOf } from '../books/marked.js';
import { address } from '../ui/address.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { loadWordsOf, t, text, verbatim } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { CsvForm } from './csv-form.js';
import { disputed } from './disputed.js';
import { otherRecords, otherRecordsOf } from './other-records.js';
import { DueSection } from '../due/section.js';
import { findings } from '../ui/findings.js';
import { standing } from '../ui/figure.js';
import { reminder } from '../backup/reminder.js';
import { face } from './face.js';
import { log, standingOf } from './log.js';
import { entries } from '../plain/entries.js';
import { stepName } from '../plain/event-line.js';
import { openJob } from '../plain/open.js';
import { loadPlainWords } from '../plain/plain.js';
import { letGo, photos } from '../photos/photos.js';
import { problems } from '../trouble/in-job.js';
import { seen } from '../look/verdict.js';
import { stillOpen } from '../still-open/strip.js';
import { section } from '../ui/section.js';
import { visitLinks } from '../visit/from-job.js';

/** The record: the list of jobs, or "#/record/ID", one job on a page. */
export async function record([id], app) {
  const screen = { name: 'record', tab: 'record', title: t('record.title') };
  await loadWordsOf('keep').catch(() => {}); // the record is readable without them
  if (id) {
    const { job, plain } = await openJob(id, app);
    if (!job) return Object.assign(screen, plain);
    const due = new DueSection(job.record.card, app, { id: job.bikeId, name: job.name });
    app.attempt(() => due.load({ newest: id }));
    await Promise.all([loadPlainWords(), settings.forOthers && loadWordsOf('visit')]);
    const [costs, others] = await Promise.all([costsOf(job), otherRecordsOf(job)]);
    const marks = (await app.attempt(() => marksOf(id))) ?? nothing;
    screen.draw = () => one(job, due, { costs, others, marks }, app);
    screen.close = () => letGo(job);
    return screen;
  }
  const list = (await app.attempt(() => store.log())) ?? [];
  const drawLog = log(list, app);
  const csv = await CsvForm.open(list, app);
  const remind = await reminder(list, app);
  screen.draw = () => html`
    <h1 tabindex="-1">${t('record.title')}</h1>
    ${remind()}
    ${list.length ? html`<p><a class="button quiet" href=${address('due')}>${t('record.due-list')}</a></p>` : nothing}
    ${drawLog()} ${list.length ? csv.draw() : nothing}
  `;
  return screen;
}

function one(job, due, { costs, others, marks }, app) {
  const { record, state } = job;
  const {
    oils = [],
    readings = [],
    notes = [],
    finished,
    dueAgain,
    findings: warnings = [],
  } = state;
  return html`
    ${stillOpen(job)}
    <h1 tabindex="-1">${text(job.name)}</h1>
    <p>
      ${t('job.started', { date: when(record.started) })} · ${standingOf(state.summary)}
      ${finished ? when(finished) : nothing}
    </p>
    ${face(job, due, app)}
    ${state.phase === 'closed' ? nothing : html`<p><a class="button" href=${address('job', record.id)}>${t('record.go-on')}</a></p>`}
    ${
      state.face
        ? nothing
        : html`<p>
              <a class="button quiet" href=${address('sheet', record.id)}>${t('record.sheet')}</a>
            </p>
            ${settings.bills ? html`<p><a class="button quiet" href=${address('bill', record.id)}>${t('record.bill')}</a></p>` : nothing}`
    }
    ${settings.books ? html`<p><a class="button quiet" href=${address('books', 'job', record.id)}>${t('record.books')}</a></p>` : nothing}
    ${settings.forOthers ? visitLinks(record.id) : nothing}
    ${costs ? html`<p>${t(`record.costs.${costs.what}`, costs)}</p>` : nothing} ${marks}
    ${state.afterwards ? html`<p>${t('record.afterwards', { count: state.afterwards })}</p>` : nothing}
    ${section('record.passed', html`<p>${state.passed?.map((id) => stepName(job, id)).join('; ')}</p>`, state.passed)}
    ${section('record.warnings', findings(warnings), warnings.length)}
    ${section('record.disputed', disputed(job, app), state.disputed?.length)}
    ${section('record.other', otherRecords(others), others.length)}
    ${section('record.problems', problems(job), state.problems?.length)} ${seen(job)}
    ${section('record.oils', oils.map(balance), oils.length)}
    ${
      due?.outlook
        ? due.draw()
        : dueAgain
          ? html`<section>
              <h2>${t(dueAgain.name)}</h2>
              <p class="big">${dueAgain.texts.map(text).join(' · ')}</p>
              ${standing(dueAgain)}
            </section>`
          : nothing
    }
    ${section(
      'record.readings',
      html`<ul>
        ${readings.map((r) => reading(r))}
      </ul>`,
      readings.length,
    )}
    ${section('record.photos', photos(job, state.photos ?? [], app), state.photos?.length)}
    ${section(
      'record.notes',
      notes.map((n) => remark(job, n)),
      notes.length,
    )}
    ${section('record.elsewhere', elsewhere(job), state.elsewhere?.length)}
    <details>
      <summary>${t('plain.entries')}</summary>
      ${entries(job)}
    </details>
  `;
}

/** Steps that were done, and that the plan of this job doesn't have. */
const elsewhere = (job) =>
  html`<p>${t('record.elsewhere.how')}</p>
    <ul>
      ${job.state.elsewhere?.map(
        ({ step, time }) => html`<li>${stepName(job, step)} <small>${when(time)}</small></li>`,
      )}
    </ul>`;

function balance({ role, due, drained, poured, level, verdict }) {
  const parts = [
    due && t('record.due', { value: due[0] }),
    drained && t('record.drained', { value: drained[0] }),
    poured && t('record.poured', { value: poured[0] }),
  ].filter(Boolean);
  return html`<article class="sheet">
    <h3>${t(role)}</h3>
    <p>${parts.join(' · ') || t('not-known')}</p>
    ${verdict ? html`<p>${t(verdict)}</p>` : nothing}
    ${level ? html`<p>${t('ask.level')}: ${t(level)}</p>` : nothing}
  </article>`;
}

function reading({ what, name, texts, card, manners = [], verdict, time }) {
  return html`<li>
    <strong>${t(`ask.${what}`)}</strong> ${name ? text(name) : nothing}:
    ${texts.map(text).join(' · ')}
    ${card ? html`<small>${t('record.card', { value: card[0] })}</small>` : nothing}
    ${manners.map((word) => html`<small>${t(word)}</small> · `)} ${verdict ? t(verdict) : nothing}
    <small>${when(time)}</small>
  </li>`;
}

function remark(job, { step, text: written, time }) {
  return html`<article class="remark">
    <p>${verbatim(written)}</p>
    <small>${step ? stepName(job, step) : nothing} ${when(time)}</small>
  </article>`;
}
