import { html, nothing } from 'lit-html';
import { file } from '../../site/data.js';
import { download, share, shareable } from '../../phone/share.js';
import { checkTexts } from './check.js';
import { packText } from './split.js';
import { address } from '../../ui/address.js';
import { allCards } from '../../store/all-cards.js';
import * as store from '../../store/store.js';
import { t } from '../../words/catalogue.js';

const few = 20; // cards read one by one; of more all are read

/** The ways to give the ticked cards away. */
export function giveAway(list, app) {
  const { size } = list.ticked;
  const give = (way) => async () => {
    const made = await app.attempt(() => pack([...list.ticked]));
    if (made) app.say(t((await way(made)) ?? ''));
  };
  return html`<p>${size ? t('cards.ticked', { count: size }) : t('cards.tick-some')}</p>
    <p class="entry">
      <button type="button" ?disabled=${!size} @click=${give(saved)}>${t('cards.save')}</button>
      ${
        sharedAs(packText([]), 'x')
          ? html`<button type="button" class="quiet" ?disabled=${!size} @click=${give(shared)}>
              ${t('cards.share')}
            </button>`
          : nothing
      }
      ${
        size === 1
          ? html`<a class="button quiet" href=${address('cards', 'show', [...list.ticked][0])}
              >${t('qr.show')}</a
            >`
          : nothing
      }
    </p>`;
}

/** The ticked cards as a pack: {text, name}. */
async function pack(keys) {
  const texts = await textsOf(keys);
  const date = new Date().toISOString().slice(0, 10);
  const name = texts.length === 1 ? JSON.parse(texts[0]).id : 'tidysump-cards';
  return { text: packText(texts), name: `${name}-${date}` };
}

/** The canonical text of a card, own or a sample. */
export const cardText = async (key) => (await textsOf([key]))[0];

/** The canonical texts of cards, in the order of their keys. */
async function textsOf(keys) {
  const read = (key) => store.card(key).catch(() => undefined);
  const own = await (keys.length > few ? allCards() : Promise.all(keys.map(read)));
  const texts = new Map(own.filter(Boolean).map(({ key, text }) => [key, text]));
  const ids = keys.filter((key) => !texts.has(key));
  if (ids.length) {
    const samples = (await file('samples.json')).filter(({ id }) => ids.includes(id));
    const entries = await checkTexts(samples.map((card) => JSON.stringify(card)));
    for (const { bike, text } of entries) texts.set(bike.id, text);
  }
  return keys.map((key) => texts.get(key)).filter(Boolean);
}

function saved({ text, name }) {
  download(new File([text], `${name}.json`, { type: 'application/json' }));
  return 'cards.saved';
}

// Some phones share text files only: the content is the same.
function sharedAs(text, name) {
  const kinds = [
    ['json', 'application/json'],
    ['txt', 'text/plain'],
  ];
  return kinds
    .map(([ending, type]) => new File([text], `${name}.${ending}`, { type }))
    .find(shareable);
}

async function shared({ text, name }) {
  const file = sharedAs(text, name);
  const how = file && (await share(file));
  return how && (how === 'shared' ? 'cards.shared' : 'cards.share-failed');
}
