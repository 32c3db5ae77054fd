import { html, nothing } from 'lit-html';
import { openJob } from '../plain/open.js';
import { draftsWritten, watchDrafts } from '../store/drafts.js';
import { Papers } from './papers.js';
import { t, loadWordsOf, text } from '../words/catalogue.js';
import { billForm } from './form.js';
import { billPaper, title } from './paper.js';
import { radios } from '../ui/choice.js';
import { said } from '../ui/said.js';
import { paper } from '../ui/paper.js';
import { stillOpen } from '../still-open/strip.js';

/** "#/bill/JOB": the estimate and the bill of a job, to write and to print. */
export async function bill([id], app) {
  await Promise.all(['bill', 'paper'].map(loadWordsOf));
  const screen = { name: 'bill', tab: 'record', title: t('bill.title') };
  const { job, plain } = await openJob(id, app);
  if (!job) return Object.assign(screen, plain);
  const papers = await Papers.open(job);
  screen.close = watchDrafts(() => app.redraw());
  screen.draw = () =>
    papers.fields ? draw(papers, app) : html`<h1 tabindex="-1">${t('bill.failed')}</h1>`;
  return screen;
}

function draw(papers, app) {
  const after = async (change) => {
    app.redraw(); // at once: what is typed next belongs to what is on the screen
    await change;
    app.redraw();
  };
  const act = {
    type: () => {
      const before = papers.changed();
      papers.type();
      if (!before) app.redraw();
    },
    change: () => after(papers.change()),
    add: (kind) => after(papers.add(kind)),
    save: () => after(save(papers, app)),
  };
  const { ok, findings: refused = [] } = papers.answer;
  // Nobody is scolded before typing.
  const notes = (ok?.notes ?? []).filter(({ where }) => !lackedAt.includes(where));
  const found = [...(papers.begun() ? refused : []), ...notes];
  // The form stays the same on the page, whatever comes of it.
  return html`
    <div class="off-paper">
      ${stillOpen(papers.job)}
      <h1 tabindex="-1">${text(papers.job.name)}</h1>
      ${radios('bill.what', 'bill.what', papers.what, ['estimate', 'bill'], (what) => after(papers.turn(what)))}
      ${billForm(papers, found, act)}
      ${said(
        '',
        found.filter(({ where }) => where === '/' || where === '/estimate'),
      )}
      ${saving(papers, act)}
      ${ok ? nothing : html`<p>${t(papers.begun() ? 'bill.mend' : 'bill.begin')}</p>`}
    </div>
    ${ok ? paper(title(papers), lacking(ok), billPaper(papers, ok), app) : nothing}
  `;
}

// Where a paper lacks what it has to show: that is told above it, and not beside the field.
const lackedAt = ['/number', '/seller', '/customer', '/remark'];

/** What the paper has to show and does not, before it is printed. */
function lacking({ notes = [] }) {
  const lacks = notes.filter(({ where }) => lackedAt.includes(where));
  return lacks.length
    ? html`<section class="lacks">
        <h2>${t('bill.lacks')}</h2>
        ${said('', lacks, false)}
      </section>`
    : nothing;
}

const saving = (papers, act) => html`
  ${papers.changed() ? html`<p class="draft">✎ ${t(draftsWritten() ? 'bill.unkept' : 'draft.pending')}</p>` : nothing}
  ${said('', papers.refused)}
  <p class="entry">
    <button type="button" @click=${act.save}>${t(`bill.keep.${papers.what}`)}</button>
  </p>
`;

async function save(papers, app) {
  if (await app.attempt(() => papers.save(), 'job.not-saved')) app.say(t('bill.kept'));
}
