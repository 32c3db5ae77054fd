import { html, nothing } from 'lit-html';
import { address } from '../ui/address.js';
import { letGo } from '../photos/photos.js';
import { loadWordsOf, t, text, verbatim } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { openJob } from '../plain/open.js';
import { watchDrafts } from '../store/drafts.js';
import { watchFacts } from '../store/windows.js';
import { section } from '../ui/section.js';
import { stillOpen } from '../still-open/strip.js';
import { Account } from './account.js';
import { amount } from './amount.js';
import { arrival } from './arrival.js';
import { foundFact, lookRound } from './look-round.js';
import { Pictured } from './pictured.js';
import { Signing } from './signing.js';
import { priceLine, troubleFact, troubles } from './troubles.js';

/** "#/visit/JOB": what stands between whoever does a job and the customer. */
export async function visit([id], app) {
  await Promise.all(['visit', 'bill', 'keep'].map(loadWordsOf));
  const { job, plain } = await openJob(id, app);
  const screen = { name: 'visit', tab: 'bikes', title: t('visit.title') };
  if (!job) return Object.assign(screen, plain);
  const account = await Account.open(job, app);
  const parts = {
    found: new Pictured(account, 'found', foundFact(account)),
    trouble: new Pictured(account, 'trouble', troubleFact(account)),
    arrival: new Signing(account, 'arrival'),
    handover: new Signing(account, 'handover'),
    begun: Boolean(account.state?.arrived),
  };
  screen.draw = () =>
    account.state ? draw(account, parts) : html`<h1 tabindex="-1">${t('bill.failed')}</h1>`;
  const unwatch = watchDrafts(() => app.redraw());
  const unfollow = watchFacts('visit', id, () => account.load());
  screen.close = () => {
    unwatch();
    unfollow();
    letGo(job);
  };
  return screen;
}

function draw(account, parts) {
  const { job, state } = account;
  return html`
    ${stillOpen(job)}
    <h1 tabindex="-1">${text(job.name)}</h1>
    <p>
      <strong>${t(`visit.stage.${state.stage}`)}</strong>
      ${state.promised ? html`· ${t('visit.promised', { when: when(state.promised) })}` : nothing}
    </p>
    ${waiting(state)} ${over(state)} ${back(account)}
    <section>
      <h2>${t('visit.arrival')}</h2>
      <details class="more" ?open=${!parts.begun}>
        <summary>${t('visit.arrival.form')}</summary>
        ${arrival(account)}
      </details>
    </section>
    ${section('visit.found', lookRound(account, parts.found))}
    ${section('visit.agreed', html`${agreement(account)} ${parts.arrival.draw()}`)}
    ${section('visit.troubles', troubles(account, parts.trouble))}
    ${section('visit.handover', handover(account, parts.handover))}
    <p class="entry">
      <a class="button quiet" href=${address('job', job.record.id)}>${t('visit.job')}</a>
      <a class="button quiet" href=${address('sheet', job.record.id)}>${t('record.sheet')}</a>
      <a class="button quiet" href=${address('label', job.record.id)}>${t('label.title')}</a>
      <a class="button quiet" href=${address('visits')}>${t('visits.title')}</a>
    </p>
  `;
}

/** What the customer has to decide before more is done. */
function waiting({ troubles: list = [], unanswered = [] }) {
  const open = list.filter(({ id }) => unanswered.includes(id));
  if (!open.length) return nothing;
  return html`<div class="message">
    <p><strong>${t('visit.ask-first', { count: open.length })}</strong></p>
    <ul>
      ${open.map((one) => html`<li>${verbatim(one.text ?? '')} · ${priceLine(one)}</li>`)}
    </ul>
  </div>`;
}

const over = ({ over: more, limit }) =>
  more
    ? html`<p class="finding" data-grade="doubt">
        ${t('visit.over', { more: amount(more), limit: amount(limit) })}
      </p>`
    : nothing;

/** The way back from what was taken back last. */
const back = (account) =>
  account.undone
    ? html`<p>
        <button
          type="button"
          class="quiet"
          @click=${() => account.undo(account.undone, 'visit.brought-back')}
        >
          ${t('visit.bring-back')}
        </button>
      </p>`
    : nothing;

/** What was agreed, as it stands. */
function agreement({ state }) {
  const work = state.said?.find(({ name }) => name === 'agreed');
  const { most, limit } = state;
  return html`
    ${work ? html`<p class="as-told">${verbatim(work.value)}</p>` : nothing}
    ${most ? html`<p>${t('visit.most', { amount: amount(most) })}</p>` : nothing}
    ${
      most && limit && limit.minor !== most.minor
        ? html`<p>${t('visit.limit', { amount: amount(limit) })}</p>`
        : nothing
    }
    ${most && !limit ? html`<p>${t('visit.limit.unknown')}</p>` : nothing}
  `;
}

function handover(account, signing) {
  const { state } = account;
  const { costs, handed } = state;
  return html`
    ${costs ? html`<p>${t('visit.costs', { amount: amount(costs) })}</p>` : nothing}
    ${signing.draw()}
    ${
      handed
        ? html`<p>${t('visit.handed', { when: when(handed) })}</p>
            <button type="button" class="quiet" @click=${() => account.undo(state.handedID)}>
              ${t('visit.take-back')}
            </button>`
        : html`<p>
            <button
              type="button"
              @click=${() => account.tell({ kind: 'handed' }, 'handed', { said: 'visit.handed.kept' })}
            >
              ${t('visit.hand-over')}
            </button>
          </p>`
    }
  `;
}
