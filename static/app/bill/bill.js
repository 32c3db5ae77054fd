import { html, nothing } from 'lit-html';
import { Papers } from './papers.js';
import { t, loadWordsOf, text } from '../words/catalogue.js';
import { billForm } from './form.js';
import { billPaper, title } from './paper.js';
import { radios } from '../ui/choice.js';
import { findings } from '../ui/findings.js';
import { paper } from '../ui/paper.js';

/** "#/bill/JOB": the estimate and the bill of a job, to write and to print. */
export async function bill([id], app) {
  await Promise.all(['bill', 'paper'].map(loadWordsOf));
  const papers = await app.attempt(() => Papers.open(id));
  const screen = { name: 'bill', tab: 'record', title: t('bill.title') };
  screen.draw = () =>
    papers?.fields
      ? draw(papers, app)
      : html`<h1 tabindex="-1">${t(papers ? 'bill.failed' : 'job.unknown')}</h1>`;
  return screen;
}

function draw(papers, app) {
  const after = async (change) => {
    app.redraw(); // at once: what is typed next belongs to what is on the screen
    await change;
    app.redraw();
  };
  const act = {
    change: () => after(papers.change()),
    add: (kind) => after(papers.add(kind)),
    save: () => after(save(papers, app)),
  };
  const { ok, findings: refused = [] } = papers.answer;
  // Nobody is scolded before typing.
  const found = [...(papers.begun() ? refused : []), ...(ok?.notes ?? [])];
  // The form stays the same on the page, whatever comes of it.
  return html`
    <div class="off-paper">
      <h1 tabindex="-1">${text(papers.job.record.name)}</h1>
      ${radios('bill.what', 'bill.what', papers.what, ['estimate', 'bill'], (what) => after(papers.turn(what)))}
      ${billForm(papers, found, act)}
      ${findings(found.filter(({ where }) => where === '/' || where === '/estimate'))}
      ${saving(papers, act)}
      ${ok ? nothing : html`<p>${t(papers.begun() ? 'bill.mend' : 'bill.begin')}</p>`}
    </div>
    ${ok ? paper(title(papers), nothing, billPaper(papers, ok), app) : nothing}
  `;
}

const saving = (papers, act) => html`
  ${papers.changed() ? html`<p>${t('bill.unkept')}</p>` : nothing} ${findings(papers.refused)}
  <p class="entry">
    <button type="button" @click=${act.save}>${t(`bill.keep.${papers.what}`)}</button>
  </p>
`;

async function save(papers, app) {
  if (await app.attempt(() => papers.save(), 'job.not-saved')) app.say(t('bill.kept'));
}
