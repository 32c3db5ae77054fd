import { html, nothing } from 'lit-html';
import { Job } from '../job.js';
import { set, settings } from '../settings.js';
import { day, loadWordsOf, t, text, when } from '../words.js';
import { finding, findings } from './figure.js';
import { found } from './owner-found.js';
import { paper, part } from './paper.js';

/** "#/sheet/JOB": one page about a job for the owner of the bike. */
export async function ownerSheet([id], app) {
  await loadWordsOf('paper');
  await loadWordsOf('bench'); // for what came out
  const work = await app.keep(() => Job.open(id));
  const title = t('paper.owner');
  const screen = { name: 'sheet', tab: 'record', title };
  screen.draw = () =>
    work?.state
      ? paper(
          `${work.record.name} ${day(work.state.finished || work.record.started)}`,
          above(work, app),
          sheet(work),
          app,
        )
      : html`<h1 tabindex="-1">${t('job.unknown')}</h1>
          ${findings(work?.findings)}`;
  return screen;
}

const above = ({ state }, app) => html`
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
`;

function sheet(work) {
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
    <footer>
      <p>${t('paper.no-promise')}</p>
      <p class="sign">${t('paper.sign')}</p>
    </footer>
  `;
}

const name = ({ word, values }) => t(word, values);

function odometer({ readings = [] }) {
  const read = readings.findLast(({ what }) => what === 'odometer');
  return read ? html`· ${t('paper.odometer')} ${read.texts[0]}` : nothing;
}

/** What is in a circuit now, and how its level is read. */
function oilOf({ circuit, role, today, need }, { record, state }) {
  if (!today) return html`<p><strong>${t(role)}:</strong> ${t('paper.oil.kept')}</p>`;
  const { poured, drained, level } = state.oils.find((o) => o.circuit === circuit);
  const { level: gauge = {} } = record.card.circuits.find(({ id }) => id === circuit);
  const told = [
    poured && t('paper.oil.poured', { value: poured[0] }),
    drained && t('paper.oil.out', { value: drained[0] }),
    level && t('paper.oil.level', { value: t(level) }),
  ].filter(Boolean);
  const known = (family, word) => (word ? t(`${family}.${word}`) : t('not-known'));
  return html`<p>
      <strong>${t(role)}:</strong> ${told.join(' · ') || t('paper.not-written')}.
      ${t('paper.oil.asked', { value: need.texts?.[0] ?? t('not-known') })}
    </p>
    <p>
      ${t('paper.level', {
        state: known('state', gauge.state),
        stance: known('stance', gauge.stance),
        device: known('device', gauge.device),
        where: gauge.where || t('not-known'),
      })}
    </p>`;
}

/** Fastener by fastener: what was used, else what the card says. */
function closed({ plan, state }) {
  const used = (id) =>
    state.readings?.findLast((r) => r.what === 'torque' && r.of === id)?.texts[0];
  const byCard = ({ torque, turn }) => (torque.texts ?? turn?.texts)?.[0];
  const tight = (b) =>
    used(b.id) ?? (byCard(b) ? t('paper.as-card', { value: byCard(b) }) : t('not-known'));
  return html`<table>
    <tr>
      ${['paper.place', 'plan.thread', 'paper.tight', 'paper.seal'].map((w) => html`<th scope="col">${t(w)}</th>`)}
    </tr>
    ${plan.bolts
      .filter(({ today }) => today)
      .map(
        (b) =>
          html`<tr>
            <td>${t(b.purpose)}${b.place ? `: ${b.place}` : nothing}</td>
            <td>${b.thread ?? '–'}</td>
            <td>${tight(b)}</td>
            <td>
              ${b.seal ? [t(b.seal), text(b.sealSize ?? '')].filter(Boolean).join(', ') : '–'}
            </td>
          </tr>`,
      )}
  </table>`;
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
