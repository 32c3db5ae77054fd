import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { day } from '../words/dates.js';
import { withAddress } from '../ui/address-with.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { findings } from '../ui/findings.js';
import { mark, marks, textsOf } from '../ui/figure.js';
import { box, paper } from '../ui/paper.js';
import { section } from '../ui/section.js';
import { own } from '../site/own.js';
import { Machine } from './machine.js';
import { heldAgainst } from './sheets.js';

/** @import { PlanAsk, BoltSheet, Oil, Plan, ShownFigure } from '../core/core.d.ts' */

/**
 * "#/bench-sheet/BIKE?SYSTEM=…": the job on paper before it begins, to tick by hand;
 * "#/bench-sheet/BIKE/card?…" is that of the card alone.
 */
export async function benchSheet([id, ...rest], app) {
  await loadWordsOf('paper');
  const screen = { name: 'bench-sheet', tab: 'bikes', title: t('paper.bench') };
  let answer;
  const make = async () => {
    const { card } = machine;
    answer =
      card && (await call('plan', { card, bench: read(rest.find((part) => /^[?{]/.test(part))) }));
  };
  const machine = await Machine.open(id, rest.includes('card'), () =>
    make().then(() => app.redraw()),
  );
  await make();
  screen.draw = () => {
    const above = html`<h1 tabindex="-1">${t('paper.bench')}</h1>
      <p>${t('paper.bench.note')}</p>
      ${machine.pending ? html`<p class="must">${t('bike.late')}</p>` : nothing}
      ${findings(machine.findings)}`;
    return answer?.ok
      ? paper(
          `${t('paper.bench')} ${machine.name}`,
          above,
          sheet({ ...answer.ok, name: machine.name }),
          app,
        )
      : html`<h1 tabindex="-1">${t('bikes.unknown')}</h1>
          ${findings(answer?.findings)}`;
  };
  return screen;
}

const several = ['circuits', 'also']; // members of a bench that are lists
const yesOrNo = { true: true, false: false };

/** The bench that goes with the address. */
const read = (given) =>
  Object.fromEntries(
    [...withAddress(given)].map(([name, texts]) => [
      name,
      several.includes(name) ? texts : (own(yesOrNo, texts[0]) ?? texts[0]),
    ]),
  );

/** @param {Plan} plan */
const sheet = ({
  name,
  oils = [],
  bolts = [],
  parts = [],
  tools = [],
  steps = [],
  gaps = [],
  filterNth = 0,
}) => html`
  <header>
    <h1>${text(name)}</h1>
    <p class="blanks">
      ${['paper.odometer', 'paper.by', 'paper.sign'].map((word) => html`<span>${t(word)}</span>`)}
    </p>
    <p>
      ${t('paper.written', { date: day(new Date().toISOString()) })} · ${t('plan.manual-wins')}
      ${t('paper.standing', { marks: marks() })}
    </p>
  </header>
  ${section('paper.oil', [
    ...oils.filter(({ today }) => today).map(oil),
    filterNth ? html`<p>${t('plan.filter-nth', { nth: filterNth })}</p>` : nothing,
  ])}
  ${section(
    'plan.gaps',
    gaps.map(({ word, values }) => html`<p>${box} ${t(word, values)}</p>`),
    gaps.length,
  )}
  ${section('plan.bolts', table(bolts.filter(({ today }) => today)))}
  ${section(
    'plan.leave',
    bolts.filter(({ leave }) => leave).map(({ place }) => html`<p>✕ ${text(place)}</p>`),
    bolts.some(({ leave }) => leave),
  )}
  <div class="two">
    ${section('plan.parts', ticks(parts))} ${section('plan.tools', ticks(tools, 'ticks run-on'))}
  </div>
  ${section('paper.steps', ticks(steps))}
`;

/** @param {Oil} oil */
const oil = ({ role, due, need, read = [] }) =>
  html`<p>
    <strong>${t(role)}: ${figure(due)}</strong> · ${figure(need)}
    ${read.map((f) => html`· ${t(f.name)} ${figure(f)} `)}
    <span class="blank">${t('paper.oil.in')}</span>
  </p>`;

/**
 * A figure with the mark of its standing, which says how far it can be trusted.
 *
 * @param {ShownFigure} f
 */
const figure = (f) => html`${textsOf(f).join(' · ') || t('not-known')} ${mark(f)}`;

/** @param {BoltSheet[]} bolts */
const table = (bolts) =>
  html`<table>
    ${bolts.map(
      ({
        purpose,
        place,
        count = 0,
        thread,
        tool,
        by = 'torque',
        seal,
        sealSize,
        listed,
        ...figures
      }) =>
        html`<tr>
          <td>${box}</td>
          <td>
            ${count > 1 ? t('plan.count', { count }) : nothing}
            ${t(purpose)}${place ? `: ${text(place)}` : nothing}
          </td>
          <td>${thread ? text(thread) : t('not-known')}</td>
          <td>${tool?.map(text).join(', ') || t('not-known')}</td>
          <td>
            ${listed ? figure(/** @type {ShownFigure} */ (own(figures, by)) ?? figures.torque) : '–'}
          </td>
          <td>${seal ? [t(seal), text(sealSize ?? '')].filter(Boolean).join(', ') : '–'}</td>
        </tr>`,
    )}
  </table>`;

/** @param {{ word: string, values?: { [name: string]: string }, count?: number, against?: string[], asks?: PlanAsk[] }[]} list */
const ticks = (list, as = 'ticks') =>
  html`<ul class=${as}>
    ${list.map(
      ({ word, values, count = 0, against, asks = [] }) =>
        html`<li>
          ${box} ${count > 1 ? t('plan.count', { count }) : nothing} ${t(word, values)}
          ${heldAgainst({ against, values })}
          ${asks.map(({ what }) => html`<span class="blank">${t(`ask.${what}`)}</span>`)}
        </li>`,
    )}
  </ul>`;
