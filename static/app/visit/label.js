import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { dueMarks } from '../due/sentences.js';
import { outlookOf } from '../due/outlook.js';
import { openJob } from '../plain/open.js';
import { logOf } from '../store/of-bike.js';
import { namedRadios } from '../ui/choice.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { day } from '../words/dates.js';
import { sizes } from './sizes.js';

const alone = 1.25; // of a label with one oil on it there is room for larger letters

/** "#/label/JOB": a small label for the frame or the filler: what went in, and when the next is due. */
export async function label([id], app) {
  await Promise.all(['visit', 'paper', 'due'].map(loadWordsOf));
  const { job, plain } = await openJob(id, app);
  const screen = { name: 'label', tab: 'record', title: t('label.title') };
  if (!job) return Object.assign(screen, plain);
  const lines = (await app.attempt(() => logOf(job.bikeId))) ?? [];
  const until = lines.filter(({ started }) => started <= job.record.started);
  const outlook = until.length ? await app.attempt(() => outlookOf(until)) : undefined;
  const shown = { size: 'plain', undo: () => {} };
  screen.draw = () => draw(job, outlook, shown, app);
  screen.close = () => shown.undo();
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
  const size = sizes.get(shown.size);
  const oils = job.plan.oils.filter(({ today }) => today);
  return html`
    <div class="off-paper">
      <h1 tabindex="-1">${t('label.title')}</h1>
      <p>${t('label.how')}</p>
      ${namedRadios('label.size.title', lines, shown.size, pick)}
      <p><button type="button" class="main" @click=${() => print()}>${t('paper.print')}</button></p>
    </div>
    <article
      class="label"
      ?data-cut=${size?.plain}
      ${ref((article) => article && fit(article, shown, oils.length))}
    >
      ${content(job, oils, outlook)}
    </article>
  `;
}

/**
 * Gives the label its size, and the paper that of the label. A browser that knows no size
 * of paper prints it into the corner of a sheet.
 */
function fit(article, shown, oils) {
  const { wide, high, letters, plain } = /** @type {any} */ (sizes.get(shown.size));
  const [width, height, fontSize] = [
    `${wide}mm`,
    `${high}mm`,
    `${oils > 1 ? letters : letters * alone}pt`,
  ];
  Object.assign(article.style, { width, height, fontSize });
  shown.undo();
  const sheet = [...document.styleSheets].at(-1);
  if (!plain && sheet) shown.undo = paperOf(sheet, `${width} ${height}`);
}

/** Prints on paper of that size until what it returns is called. */
function paperOf(sheet, size) {
  const at = sheet.insertRule(`@page{size:${size};margin:0}`, sheet.cssRules.length);
  let rule = sheet.cssRules.item(at);
  return () => {
    const now = [...sheet.cssRules].indexOf(rule);
    if (now >= 0) sheet.deleteRule(now);
    rule = undefined;
  };
}

function content({ record, state }, oils, outlook) {
  const { finished, summary } = state;
  return html`
    <p class="name">${text(record.name)}</p>
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
  return html`<p>
      <strong>${t(role)}:</strong> ${grade ? text(grade) : t('label.no-grade')} ·
      ${poured ? text(poured) : t('paper.not-written')}
    </p>
    <p class="due-next">
      ${t('label.next')}
      <strong>${marks.length ? marks.join(' · ') : t('not-known')}</strong>
    </p>`;
}
