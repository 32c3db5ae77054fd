import { html } from 'lit-html';
import { bikeList } from '../bikes/bike-list.js';
import { file } from '../site/data.js';
import { files } from '../site/files.js';
import { address, go } from '../ui/address.js';
import * as store from '../store/store.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { CardRows } from './rows.js';
import { CardList } from './list.js';
import { drawVersions, versions } from './versions.js';
import { TakeIn } from './pack/take-in.js';
import { giveAway } from './pack/give-away.js';
import { handOver } from './qr/handed.js';
import { QrRead } from './qr/read.js';
import { showCodes } from './qr/show.js';
import { section } from '../ui/section.js';

/**
 * The cards: "#/cards" takes some in, gives some away, deletes some; "#/cards/read"
 * reads one, or a bike, from QR codes, "#/cards/show/KEY" shows one as such.
 */
export async function cards([view, key], app) {
  await loadWordsOf('cards');
  if (view === 'show') return showCodes(key, app);
  const { bikes: samples = [] } = await file('bikes.json');
  const marks = new CardRows(app);
  const list = new CardList(marks, app);
  let twins = [];
  const load = async () => {
    const kept = await app.attempt(() => Promise.all([store.log(), store.lines()]));
    const [jobs, lines] = kept ?? [[], []];
    list.rows = bikeList(lines, samples, jobs, t);
    twins = await versions(list.rows);
  };
  await load();
  const incoming = new TakeIn(app, load);
  /** @type {QrRead | null} */
  let reading = null;
  const move = ([view]) => {
    reading?.close();
    const read = (text, kind) => {
      if (kind === 'bike') return (handOver(text), go('keep', 'codes'));
      return (incoming.take(text), go('cards'));
    };
    reading = view === 'read' ? new QrRead(app, read) : null;
    return true;
  };
  move([view]);
  const draw = () => html`
    <h1 tabindex="-1">${t('cards.title')}</h1>
    ${drawVersions(twins, marks)}
    ${section(
      'cards.in',
      html`${incoming.draw()}
        <p><a class="button quiet" href=${address('cards', 'read')}>${t('qr.read')}</a></p>`,
    )}
    ${section(
      'cards.out',
      html`<p>${t('cards.out.how')}</p>
        ${list.draw()} ${giveAway(marks, app)}`,
    )}
    ${section(
      'cards.format',
      html`<p>${t('cards.format.text')}</p>
        <p>
          <a class="button quiet" href=${files['card.schema.json']} download>
            ${t('cards.schema')}
          </a>
        </p>`,
    )}
  `;
  return {
    name: 'cards',
    tab: 'bikes',
    title: t('cards.title'),
    holds: ([view]) => view !== 'show',
    move,
    close: () => reading?.close(),
    draw: () => (reading ?? (incoming.open ? incoming : { draw })).draw(),
  };
}
