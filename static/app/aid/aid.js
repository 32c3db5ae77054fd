import { html, nothing } from 'lit-html';
import { own } from '../site/own.js';
import { address } from '../ui/address.js';
import { addressWith, withAddress } from '../ui/address-with.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { kinds } from './kinds.js';
import { aidLinks } from './links.js';

/**
 * First aid: "#/aid/KIND" is one card, "#/aid" the way to all. The job and step that one
 * came from go with it. Nothing is worked out here, and no core asked.
 */
export async function aid(parts) {
  await loadWordsOf('aid');
  const screen = { name: 'aid', tab: 'bikes', title: t('aid.title') };
  let shown = read(parts);
  screen.holds = () => true;
  screen.move = (to) => {
    shown = read(to);
    return true;
  };
  screen.draw = () => draw(shown);
  return screen;
}

/** The card of an address, undefined where it names none, and where one came from. */
export function read([kind = '', text]) {
  const lines = own(kinds, kind);
  return { kind: lines && kind, lines, from: cameFrom(text) };
}

function cameFrom(text) {
  const rest = withAddress(text);
  const [[job] = [], [step] = []] = [rest.get('job'), rest.get('step')];
  if (!job) return {}; // nothing leads back
  return step ? { job, step } : { job };
}

// What to do comes before everything else, so that it stands first with large text too.
const draw = ({ kind, lines, from }) => html`
  <h1 tabindex="-1">${t(kind ? `aid-title.${kind}` : 'aid.which')}</h1>
  ${kind ? card(kind, lines) : nothing}
  <p class="bar">
    ${from.job ? html`<a class="all" href=${back(from)}>${t('aid.back')}</a>` : nothing}
    <a class="all" href=${addressWith(['trouble'], from)}>${t('aid.problems')}</a>
  </p>
  ${aidLinks(from, kind)}
`;

const back = ({ job, step }) => address('job', job, ...(step ? ['step', step] : []));

const card = (kind, lines) =>
  html`<article class="aid-card">
    <ol>
      ${lines.map((line) => html`<li>${t(`aid.${kind}.${line}`)}</li>`)}
    </ol>
    <p class="not"><span aria-hidden="true">✕</span> ${t(`aid.${kind}.not`)}</p>
    <p class="call"><span aria-hidden="true">✆</span> ${t(`aid.${kind}.call`)}</p>
    <p><small>${t('aid.defer')} ${t(`aid-source.${kind}`)}</small></p>
  </article>`;
