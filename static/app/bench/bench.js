import { html } from 'lit-html';
import { call } from '../core/client.js';
import { address } from '../ui/address.js';
import { withAddress } from '../ui/address-with.js';
import { settings } from '../store/settings.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { Calculation } from './calculation.js';
import { Line } from './line.js';
import { findings } from '../ui/findings.js';

/**
 * The bench: "#/bench" lists the calculations, "#/bench/OP" opens one,
 * "#/bench/OP?FIELD=TEXT" opens it with what a step knows; "back" says that there is one.
 */
export async function bench([op, given], app) {
  await loadWordsOf('bench');
  const { ok, findings: refused } = await call('forms', { system: settings.system });
  const screen = { name: 'bench', tab: 'bench', title: t('bench.title') };
  const form = ok?.forms?.find((f) => f.op === op);
  if (form) {
    const calculation = await Calculation.open(form, readGiven(given), app);
    screen.title = t(`calc.${op}`);
    screen.draw = () => calculation.draw();
  } else if (ok) {
    const line = await Line.open(ok.forms, app);
    screen.draw = () => list(ok.forms, line);
    screen.close = () => line.end();
  } else screen.draw = () => without(refused);
  return screen;
}

/** What a step knows, by field; undefined where one comes from none. */
function readGiven(part) {
  if (!part?.startsWith('?')) return earlier(part);
  const given = [...withAddress(part)].filter(([field]) => field !== 'back');
  return Object.fromEntries(given.map(([field, [text]]) => [field, text]));
}

/** What is given as JSON: lists of wrenches and bottles, and what is ticked. */
function earlier(part) {
  try {
    return JSON.parse(part);
  } catch {
    return undefined;
  }
}

const without = (refused) =>
  html`<h1 tabindex="-1">${t('bench.title')}</h1>
    ${findings(refused)}`;

function list(forms, line) {
  return html`
    <h1 tabindex="-1">${t('bench.title')}</h1>
    ${line.draw()}
    <h2>${t('bench.all')}</h2>
    <p>${t('bench.intro')}</p>
    <ul class="calculations">
      ${forms.map(
        ({ op }) =>
          html`<li>
            <a href=${address('bench', op)}>
              <strong>${t(`calc.${op}`)}</strong>
              <span>${t(`calc.${op}.why`)}</span>
            </a>
          </li>`,
      )}
    </ul>
  `;
}
