import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { day } from '../words/dates.js';
import { withAddress } from '../ui/address-with.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { findings } from '../ui/findings.js';
import { mark, marks, parted, textsOf } from '../ui/figure.js';
import { box, paper } from '../ui/paper.js';
import { own } from '../site/own.js';
import { Machine } from './machine.js';
import { heldAgainst } from './sheets.js';

/** @import { PlanAsk, BoltSheet, Oil, Plan, PlateFigure, ShownFigure } from '../core/core.d.ts' */

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
function sheet({
  name,
  plate = [],
  oils = [],
  bolts = [],
  parts = [],
  tools = [],
  steps = [],
  gaps = [],
  filterNth = 0,
}) {
  const leave = bolts.filter((bolt) => bolt.leave);
  return html`<div class=${steps.length > few ? 'dense' : ''}>
    <header>
      <h1>${text(name)}</h1>
      <p class="blanks">
        ${['paper.odometer', 'paper.by', 'paper.sign'].map((word) => html`<span>${t(word)}</span>`)}
      </p>
    </header>
    <ul class="figures">
      ${oils.filter(({ today }) => today).map((of) => oil(of, plate))}
      ${bolts.filter(({ today, listed }) => today && listed).map(bolt)}
    </ul>
    ${filterNth ? html`<p>${t('plan.filter-nth', { nth: filterNth })}</p>` : nothing}
    ${run('plan.gaps', gaps, ({ word, values }) => html`${box} ${t(word, values)}`)}
    ${run('plan.leave', leave, ({ place }) => html`✕ ${text(place)}`)}
    ${run('plan.parts', parts, tick)} ${run('plan.tools', tools, tick)}
    <div class="stages">
      ${[...new Set(steps.map(({ stage }) => stage))].map(
        (stage) =>
          html`<section>
            <h2>${t(`stage.${stage}`)}</h2>
            <ul class="ticks">
              ${steps.filter((step) => step.stage === stage).map((step) => html`<li>${tick(step)}</li>`)}
            </ul>
          </section>`,
      )}
    </div>
    <footer>
      <p>
        ${t('paper.written', { date: day(new Date().toISOString()) })}. ${t('plan.manual-wins')}
        ${t('paper.standing', { marks: marks() })}
      </p>
    </footer>
  </div>`;
}

const few = 42; // steps, which go on one page at their usual size

/** A list that runs on in its line, behind its name. */
const run = (word, list, draw) =>
  list.length
    ? html`<section class="run">
        <h2>${t(word)}</h2>
        <ul class="ticks run-on">
          ${list.map((one) => html`<li>${draw(one)}</li>`)}
        </ul>
      </section>`
    : nothing;

/**
 * A figure that is read across the bench, with its mark, and what qualifies it small.
 *
 * @param {ShownFigure} of
 * @param {unknown[]} more
 */
function large(of, more) {
  const [first = t('not-known'), ...others] = textsOf(of);
  const { number, unit } = parted(first);
  return html`<bdi class="large">${number} <small>${unit} ${mark(of)}</small></bdi>
    <small>${[...others, ...more].filter(Boolean).join(' · ')}</small>`;
}

/**
 * How much of which oil, in a cell; what of it goes in first, in one more.
 *
 * @param {Oil} oil
 * @param {PlateFigure[]} plate
 */
function oil({ circuit, role, due, need, read = [] }, plate) {
  const [, first] = plate.filter(({ of, words }) => of === circuit && !words);
  const kind = `${textsOf(need)[0] ?? t('unknown.oil')} ${mark(need)}`;
  const how = read.map((f) => `${t(f.name ?? '')}: ${textsOf(f)[0] ?? t('not-known')} ${mark(f)}`);
  return html`<li>
      <span>${t(role)}</span>
      ${large(due, [kind, ...how])}
      <span class="blank">${t('paper.oil.in')}</span>
    </li>
    ${first ? html`<li><span>${t(first.name ?? '', first.values)}</span> ${large(first, [])}</li>` : nothing}`;
}

/** @param {BoltSheet} sheet */
function bolt(sheet) {
  const { purpose, place, count = 0, thread, tool, seal, sealSize, by = 'torque' } = sheet;
  return html`<li>
    <span
      >${box} ${count > 1 ? t('plan.count', { count }) : nothing}
      ${t(purpose)}${place ? `: ${text(place)}` : nothing}</span
    >
    ${large(/** @type {ShownFigure} */ (own(sheet, by)) ?? sheet.torque, [
      tool?.map(text).join(' '),
      thread && text(thread),
      seal && [t(seal), text(sealSize ?? '')].filter(Boolean).join(' '),
    ])}
  </li>`;
}

/**
 * A thing to lay out, or a step, with its box and what is written beside it.
 *
 * @param {{ word: string, values?: { [name: string]: string }, count?: number, against?: string[], asks?: PlanAsk[] }} line
 */
const tick = ({ word, values, count = 0, against, asks = [] }) =>
  html`${box} ${count > 1 ? t('plan.count', { count }) : nothing} ${t(word, values)}
  ${heldAgainst({ against, values })}
  ${asks.map(({ what }) => html`<span class="blank">${t(`ask.${what}`)}</span>`)}`;
