import { html, nothing } from 'lit-html';
import { costsOf } from '../costs.js';
import { Job } from '../job.js';
import { address } from '../router.js';
import { settings } from '../settings.js';
import * as store from '../store.js';
import { loadWordsOf, t, text, when } from '../words.js';
import { CsvOut } from './csv-out.js';
import { DuePart } from './due-part.js';
import { findings, standing } from './figure.js';
import { reminder } from './keep-remind.js';
import { log, standingOf } from './log.js';
import { letGo, photos } from './photos.js';
import { problems } from './trouble-job.js';
import { seen } from './verdict.js';
import { part } from './part.js';

/** The record: the list of jobs, or "#/record/ID", one job on a page. */
export async function record([id], app) {
  const screen = { name: 'record', tab: 'record', title: t('record.title') };
  await loadWordsOf('keep').catch(() => {}); // the record is readable without them
  if (id) {
    const work = await app.keep(() => Job.open(id));
    const due = work?.state && new DuePart(work.record.card, app);
    if (due) app.keep(() => due.load({ newest: id }));
    await loadWordsOf('bench').catch(() => {}); // for what came out
    const costs = work?.state && (await costsOf(work));
    screen.draw = () =>
      work?.state
        ? one(work, due, costs, app)
        : html`<h1 tabindex="-1">${t('job.unknown')}</h1>
            ${findings(work?.findings)}`;
    screen.close = () => letGo(work);
    return screen;
  }
  const list = (await app.keep(() => store.log())) ?? [];
  const drawLog = log(list, app);
  const csv = await CsvOut.open(list, app);
  const remind = await reminder(list, app);
  screen.draw = () => html`
    <h1 tabindex="-1">${t('record.title')}</h1>
    ${remind()}
    ${list.length ? html`<p><a class="button quiet" href=${address('due')}>${t('record.due-list')}</a></p>` : nothing}
    ${drawLog()} ${list.length ? csv.draw() : nothing}
  `;
  return screen;
}

function one(work, due, costs, app) {
  const { record: job, state } = work;
  const {
    oils = [],
    readings = [],
    notes = [],
    finished,
    dueAgain,
    findings: warnings = [],
  } = state;
  return html`
    <h1 tabindex="-1">${job.name}</h1>
    <p>
      ${t('job.started', { date: when(job.started) })} ·
      ${standingOf({ ...state, done: state.done?.length })} ${finished ? when(finished) : nothing}
    </p>
    ${finished && !state.waiting ? nothing : html`<p><a class="button" href=${address('job', job.id)}>${t('record.go-on')}</a></p>`}
    <p><a class="button quiet" href=${address('sheet', job.id)}>${t('record.sheet')}</a></p>
    ${settings.bills ? html`<p><a class="button quiet" href=${address('bill', job.id)}>${t('record.bill')}</a></p>` : nothing}
    ${costs ? html`<p>${t(`record.costs.${costs.what}`, costs)}</p>` : nothing}
    ${part('record.warnings', findings(warnings), warnings.length)}
    ${part('record.problems', problems(work), state.problems?.length)} ${seen(work)}
    ${part('record.oils', oils.map(balance), oils.length)}
    ${
      due?.outlook
        ? due.draw()
        : dueAgain
          ? html`<section>
              <h2>${t(dueAgain.name)}</h2>
              <p class="big">${dueAgain.texts.join(' · ')}</p>
              ${standing(dueAgain)}
            </section>`
          : nothing
    }
    ${part(
      'record.readings',
      html`<ul>
        ${readings.map((r) => reading(r))}
      </ul>`,
      readings.length,
    )}
    ${part('record.photos', photos(work, state.photos ?? [], app), state.photos?.length)}
    ${part(
      'record.notes',
      notes.map((n) => remark(work, n)),
      notes.length,
    )}
  `;
}

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

function reading({ what, name, texts, card, time }) {
  return html`<li>
    <strong>${t(`ask.${what}`)}</strong> ${name ? text(name) : nothing}:
    ${texts.map(text).join(' · ')}
    ${card ? html`<small>${t('record.card', { value: card[0] })}</small>` : nothing}
    <small>${when(time)}</small>
  </li>`;
}

function remark(work, { step, text: written, time }) {
  const at = step && work.step(step);
  return html`<article class="remark">
    <p>${written}</p>
    <small>${at ? t(at.word, at.values) : nothing} ${when(time)}</small>
  </article>`;
}
