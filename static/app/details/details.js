import { html, nothing } from 'lit-html';
import { loadLimits } from '../core/limits.js';
import { watchDrafts } from '../store/drafts.js';
import { GiveBike } from '../backup/give-bike.js';
import { DueSection } from '../due/section.js';
import { bikeName } from '../store/bike-name.js';
import { watchFacts } from '../store/windows.js';
import { address } from '../ui/address.js';
import { section } from '../ui/section.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { asideOf } from './aside.js';
import { Entries } from './entries.js';
import { figuresOf } from './figures.js';
import { followed } from './followed.js';
import { jobsOf } from './jobs.js';
import { joinsOf } from './joins.js';
import { Pictures } from './pictures.js';
import { Telling } from './telling.js';
import { tellings } from './tellings.js';

/** "#/details/ID": what is told of a bike, and what can be done with its record. */
export async function details([id], app) {
  await Promise.all([loadWordsOf('details'), loadWordsOf('keep'), loadLimits()]);
  const telling = await app.attempt(() => Telling.open(id ?? '', app));
  const screen = { name: 'details', tab: 'bikes', title: t('details.title') };
  const none = () => html`<h1 tabindex="-1">${t('bikes.unknown')}</h1>`;
  if (!telling?.known) return Object.assign(screen, { draw: none });
  screen.title = telling.name;
  const entries = new Entries(telling, app);
  const pictures = new Pictures(telling, app);
  const give = new GiveBike(telling.id, app);
  const due = new DueSection(telling.card ?? {}, app, telling);
  app.attempt(() => due.load());
  const unwatch = [
    watchDrafts(() => app.redraw()),
    watchFacts('bike', undefined, () =>
      telling.load().then(
        () => app.redraw(),
        () => {},
      ),
    ),
  ];
  return Object.assign(screen, {
    draw: () => draw(telling, entries, pictures, give, due),
    close: () => {
      for (const end of unwatch) end();
      pictures.close();
    },
  });
}

function draw(telling, entries, pictures, give, due) {
  const { id, row, model, name, root } = telling;
  if (root)
    return html`<h1 tabindex="-1">${text(bikeName(row, model))}</h1>
      ${joinsOf(telling)}`;
  return html`
    <h1 tabindex="-1">${text(name)}</h1>
    <p><a class="button quiet" href=${address('bike', id)}>${t('details.plan')}</a></p>
    ${tellings(entries)} ${section('details.odometer', due.odometer(), due.outlook)}
    ${section('details.figures', figuresOf(telling, entries))}
    ${section('details.card', followed(telling))} ${section('details.photos', pictures.draw())}
    ${telling.lines.length ? section('details.jobs', jobsOf(telling)) : nothing}
    ${section('details.joins', joinsOf(telling))} ${section('details.aside', asideOf(telling))}
    ${section('give.title', give.draw())}
  `;
}
