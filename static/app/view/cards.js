import { html } from 'lit-html';
import { bikeList } from '../bike-list.js';
import { file } from '../data.js';
import { files } from '../files.js';
import { address, go } from '../router.js';
import * as store from '../store.js';
import { loadWordsOf, t } from '../words.js';
import { CardRows } from './card-row.js';
import { CardList } from './cards-list.js';
import { drawVersions, versions } from './cards-versions.js';
import { PackIn } from './pack-in.js';
import { packOut } from './pack-out.js';
import { QrRead } from './qr-read.js';
import { showCodes } from './qr-show.js';
import { part } from './part.js';

/**
 * The cards: "#/cards" takes some in, gives some away, deletes some; "#/cards/read"
 * reads one from QR codes, "#/cards/show/KEY" shows one as such.
 */
export async function cards([view, key], app) {
  await loadWordsOf('cards');
  if (view === 'show') return showCodes(key, app);
  const { bikes: samples = [] } = await file('bikes.json');
  const marks = new CardRows(app);
  const list = new CardList(marks, app);
  let twins = [];
  const load = async () => {
    const kept = await app.keep(() => Promise.all([store.log(), store.lines()]));
    const [jobs, lines] = kept ?? [[], []];
    list.rows = bikeList(lines, samples, jobs, t);
    twins = await versions(list.rows);
  };
  await load();
  const incoming = new PackIn(app, load);
  let reading = null;
  const move = ([part]) => {
    reading?.close();
    const read = (text) => (incoming.take(text), go('cards'));
    reading = part === 'read' ? new QrRead(app, read) : null;
    return true;
  };
  move([view]);
  const draw = () => html`
    <h1 tabindex="-1">${t('cards.title')}</h1>
    ${drawVersions(twins, marks)}
    ${part(
      'cards.in',
      html`${incoming.draw()}
        <p><a class="button quiet" href=${address('cards', 'read')}>${t('qr.read')}</a></p>`,
    )}
    ${part(
      'cards.out',
      html`<p>${t('cards.out.how')}</p>
        ${list.draw()} ${packOut(marks, app)}`,
    )}
    ${part(
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
    holds: ([part]) => part !== 'show',
    move,
    close: () => reading?.close(),
    draw: () => (reading ?? (incoming.open ? incoming : { draw })).draw(),
  };
}
