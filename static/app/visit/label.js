import { html } from 'lit-html';
import { dueMarks } from '../due/sentences.js';
import { outlookOf } from '../due/outlook.js';
import { openJob } from '../plain/open.js';
import { bikeName } from '../store/bike-name.js';
import { logOf } from '../store/of-bike.js';
import { namedRadios } from '../ui/choice.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { day } from '../words/dates.js';
import { sizes } from './sizes.js';

/** "#/label/JOB": a small label for the frame or the filler: what went in, and when the next is due. */
export async function label([id], app) {
  await Promise.all(['visit', 'paper', 'due'].map(loadWordsOf));
  const { job, plain } = await openJob(id, app);
  const screen = { name: 'label', tab: 'record', title: t('label.title') };
  if (!job) return Object.assign(screen, plain);
  const lines = (await app.attempt(() => logOf(job.bikeId))) ?? [];
  const until = lines.filter(({ started }) => started <= job.record.started);
  const outlook = until.length ? await app.attempt(() => outlookOf(until)) : undefined;
  const shown = { size: 'plain' };
  screen.draw = () => draw(job, outlook, shown, app);
  return screen;
}

function draw(job, outlook, shown, app) {
  const lines = [...sizes].map(([id, { wide, high, plain }]) => ({
    id,
    label: t(plain ? 'label.size.plain' : 'label.size', { wide, high }),
  }));
  const pick = (size) => {
    shown.size = size;
    app.redraw();
  };
  const oils = job.plan.oils.filter(({ today }) => today);
  return html`
    <div class="off-paper">
      <h1 tabindex="-1">${t('label.title')}</h1>
      <p>${t('label.how')}</p>
      ${namedRadios('label.size.title', lines, shown.size, pick)}
      <p><button type="button" class="main" @click=${() => print()}>${t('paper.print')}</button></p>
    </div>
    <article class="bike-label" data-size=${shown.size} ?data-alone=${oils.length === 1}>
      ${content(job, oils, outlook)}
    </article>
  `;
}

/** What the bike is called, without its plate: whoever stands beside it reads the label. */
const nameOf = ({ bike, record }) => bikeName(bike && { ...bike, plate: undefined }, record.name);

function content(job, oils, outlook) {
  const { record, state } = job;
  const { finished, summary } = state;
  return html`
    <p class="name">${text(nameOf(job))}</p>
    <p>
      ${day(finished || record.started)} · ${t('paper.odometer')}:
      ${text(summary.odometer ?? '@not-known')}
    </p>
    ${oils.map((oil) => oilLine(oil, record, state, outlook))}
  `;
}

/** What went into a circuit, and when it is due again. */
function oilLine({ circuit, role }, { card }, { oils = [] }, outlook) {
  const poured = oils.find((one) => one.circuit === circuit)?.poured?.[0];
  const grade = card.circuits.find(({ id }) => id === circuit)?.oil?.grades?.[0];
  const due = outlook?.oils?.find((one) => one.circuit === circuit);
  const marks = due ? dueMarks(due) : [];
  return html`<p class="oil-line">
      <strong>${t(role)}:</strong> ${grade ? text(grade) : t('label.no-grade')} ·
      ${poured ? text(poured) : t('paper.not-written')}
    </p>
    <p class="oil-line due-next">
      ${t('label.next')}
      <strong>${marks.length ? marks.join(' · ') : t('not-known')}</strong>
    </p>`;
}
