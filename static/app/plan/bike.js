import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { askToKeep } from '../store/promise.js';
import { startJob } from '../store/job.js';
import { go } from '../ui/address.js';
import { set, settings } from '../store/settings.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { radios, ticks } from '../ui/choice.js';
import { control } from '../ui/field.js';
import { DueSection } from '../due/section.js';
import { finding, findings } from '../ui/findings.js';
import { toDetails, toEdit, toPaper, toTrouble } from './links.js';
import { another, Machine } from './machine.js';
import { plate } from './plate.js';
import { asks, corrected, told, twins } from './told.js';
import { boltSheets, gaps, leftAlone, lists, oilSheets, stages } from './sheets.js';
import { fold, section } from '../ui/section.js';

/** @import { Answer, Bench, Card, Plan } from '../core/core.d.ts' */

/**
 * The plan of a bike: what today is like, and all that follows from it. "#/bike/ID" is a bike
 * or the card that implies one, "#/bike/KEY/card" a card as such.
 */
export async function bike([id, alone], app) {
  const screen = { name: 'bike', tab: 'bikes', title: t('plan.title') };
  /** @type {() => void} */
  let came = () => {};
  const machine = await Machine.open(id, alone === 'card', () => came());
  if (!machine.card) {
    screen.draw = () => html`<h1 tabindex="-1">${t('bikes.unknown')}</h1>`;
    return screen;
  }
  screen.title = machine.name;
  /** @type {Bench} */
  const bench = { system: settings.system };
  const due = new DueSection(machine.card, app, machine);
  /** @type {{ asking: boolean, view: string[] }} view: which of the job comes first */
  const state = { asking: false, view: [] };
  /** @type {Answer<Plan> | null} */
  let answer = null;
  const makePlan = async () => {
    const card = /** @type {Card} */ (machine.card);
    await loadLimits();
    bench.place ??= limits.places?.[0];
    const made = await call('plan', { card, bench });
    if (card !== machine.card) return; // another is being worked out by now
    answer = made;
    app.redraw();
  };
  const change = (values) => {
    Object.assign(bench, values);
    due.follow(bench, values);
    makePlan();
  };
  came = () => {
    Object.assign(due, { id: machine.id, name: machine.name });
    due.begin(bench, change);
    makePlan();
    app.redraw();
  };
  const start = async (on) => {
    const job = await app.attempt(() =>
      startJob(/** @type {Card} */ (on.card), bench, on.id || undefined, on.raw),
    );
    if (!job) return;
    askToKeep();
    go('job', job, ...state.view);
  };
  const acts = {
    start: async (...view) => {
      state.view = view;
      await machine.told; // what counts in the job, and whose it is
      if (!machine.ambiguous) return start(machine);
      state.asking = true;
      app.redraw();
      document.getElementById('which')?.focus();
    },
    // One whose plan is not the one on the screen is shown its own first.
    on: async ({ id: other }) => {
      const on = await app.attempt(() => Machine.open(other, false, () => {}));
      if (on?.row?.figures?.length || on?.changes.length) go('bike', other);
      else if (on) start(on);
    },
    own: () => start(machine),
    begin: async (then) => {
      const made = await app.attempt(() => another(machine.at.card?.id ?? ''));
      if (made) then(made);
    },
    another: () => acts.begin((made) => go('bike', made)),
    onAnother: () => acts.begin((made) => start({ id: made, card: machine.at.card })),
    correct: async () => {
      await machine.correct();
      app.say(t('bike.corrected.taken'));
      makePlan();
    },
  };
  screen.draw = () =>
    html`${draw(machine, bench, answer, change, due, acts, state.asking)}
      <p class="entry">
        ${toTrouble(machine.id || id)} ${machine.id ? toDetails(machine.id) : nothing}
        ${toPaper(bench, id, alone)} ${ownKey(machine) ? toEdit(ownKey(machine)) : nothing}
      </p>
      ${twins(machine, acts)} ${begin(answer, acts)}`;
  makePlan();
  due.begin(bench, change);
  return screen;
}

/**
 * The key of the card where that is one's own, which can be changed.
 *
 * @param {Machine} machine
 */
const ownKey = ({ at: { key, card } }) => (key && key !== card?.id ? key : '');

function draw(machine, bench, answer, change, due, acts, asking) {
  const { card } = machine;
  const plan = answer?.ok;
  return html`
    <h1 tabindex="-1">${text(machine.name)}</h1>
    ${told(machine, [plan?.years && text(plan.years), card.invented && t('plan.invented')])}
    ${corrected(machine, acts)} ${plan && bench.place ? shortOrWhole(bench, change) : nothing}
    ${asking ? asks(machine, acts) : nothing}
    ${plan ? figures(plan, ownKey(machine)) : answer ? findings(answer.findings) : html`<p>${t('plan.waiting')}</p>`}
    ${plan && bench.place ? today(bench, plan, change, due) : nothing} ${due.line()}
    ${plan ? lines(card, plan) : nothing}
  `;
}

/** What somebody who knows the job looks for, and what has to be found before it. */
function figures({ plate: plated, bolts, gaps: missing, findings: doubts = [] }, key) {
  return html`<section class="first-seen">
      <h2 class="hidden">${t('plate.title')}</h2>
      ${plated?.length ? plate(plated) : nothing}
      <p class="line">${t('plan.manual-first')}</p>
      ${leftAlone(bolts)}
    </section>
    ${doubts.length ? section('plan.doubts', doubts.map(finding)) : nothing}
    ${gaps(missing, { key })}`;
}

/** What is laid out and read before a job, as far as one wants to. */
function lines(card, { oils, bolts, parts, tools, steps }) {
  return html`${lists('plan.parts', parts)} ${lists('plan.tools', tools)} ${stages(steps)}
  ${oilSheets(oils)} ${boltSheets(bolts)} ${remarks(card)}`;
}

/** The bar with which a job begins, once there is a plan. */
const begin = (answer, acts) =>
  answer?.ok
    ? html`<div class="actions two-ways">
        <button type="button" class="main" @click=${() => acts.start()}>${t('plan.start')}</button>
        <button type="button" class="quiet" @click=${() => acts.start('page')}>
          ${t('plan.quick')}
        </button>
      </div>`
    : nothing;

/** What the card says in its own words: of the job, and of a moment of it. */
function remarks({ notes = [], notesAt = [] }) {
  return fold('plan.remarks', notes.length + notesAt.length, [
    ...notes.map((note) => html`<p>${verbatim(note)}</p>`),
    ...notesAt.map(
      ({ at, text: note }) =>
        html`<p><strong>${t(`note-at.${at}`)}:</strong> ${verbatim(note)}</p>`,
    ),
  ]);
}

/**
 * The bench: what is true here today, in one line that opens.
 *
 * @param {Bench} bench
 * @param {Partial<Plan>} plan
 * @param {(values: Bench) => void} change
 * @param {DueSection} due
 */
function today(bench, { oils = [], also, mayKeepFilter, filterNth = 0 } = {}, change, due) {
  const system = (value) => {
    set('system', value).catch(() => {}); // a store that is missing must not stop the plan
    change({ system: value });
  };
  const filter = bench.keepFilter ? 'keep' : 'change';
  const summary = {
    units: t(`plan.units.${bench.system}`),
    filter: t(`plan.filter.${filter}.short`),
    place: t(`plan.place.${bench.place}`),
  };
  return html`<details class="today">
    <summary>${t(mayKeepFilter ? 'plan.today' : 'plan.today.no-filter', summary)}</summary>
    ${radios('plan.units', 'plan.units', bench.system ?? undefined, limits.systems ?? [], system)}
    ${
      mayKeepFilter
        ? radios('plan.filter', 'plan.filter', filter, ['change', 'keep'], (v) =>
            change({ keepFilter: v === 'keep' }),
          )
        : nothing
    }
    ${filterNth ? html`<p><small>${t('plan.filter-nth', { nth: filterNth })}</small></p>` : nothing}
    ${radios('plan.place', 'plan.place', bench.place ?? undefined, limits.places ?? [], (v) =>
      change({ place: v, getHome: offersShort(v) }),
    )}
    ${oils.some(({ chart }) => chart) ? outside(bench, change) : nothing}
    ${ticks('plan.hands', [{ label: t('plan.helper'), on: bench.helper }], (_, on) => change({ helper: on }))}
    ${due.use(bench, change)} ${oils.length > 1 ? circuits(bench, oils, change) : nothing}
    ${also ? alsos(bench, also, change) : nothing}
  </details>`;
}

/**
 * The air expected, by which the chart of the manual gives a grade.
 *
 * @param {Bench} bench
 * @param {(values: Bench) => void} change
 */
const outside = (bench, change) =>
  html`<div class="field">
    ${control(
      { name: 'outside', kind: 'text', letters: limits.reading },
      {
        id: 'outside',
        value: bench.outside ?? '',
        label: t('plan.outside'),
        hint: html`<small>${t('plan.outside.hint')}</small>`,
        type: () => {},
        set: (air) => change({ outside: air }),
      },
    )}
  </div>`;

/** Whether the short form of the job is offered first at a place. */
const offersShort = (place) => Boolean(limits.getHomeAt?.includes(place));

/**
 * The short form of the job and the whole one, each a tap from the other, where one may
 * want no more than to get home.
 *
 * @param {Bench} bench
 * @param {(values: Bench) => void} change
 */
const shortOrWhole = (bench, change) =>
  bench.getHome || offersShort(bench.place)
    ? html`<section class="short-form">
        <p>${t(bench.getHome ? 'plan.get-home' : 'plan.whole')}</p>
        <button type="button" class="quiet" @click=${() => change({ getHome: !bench.getHome })}>
          ${t(bench.getHome ? 'plan.get-home.whole' : 'plan.whole.get-home')}
        </button>
      </section>`
    : nothing;

function circuits(bench, oils, change) {
  const pick = (id, on) => {
    // What was chosen a moment ago counts, though the core has not answered yet.
    const before = bench.circuits ?? oils.filter((o) => o.today).map((o) => o.circuit);
    const chosen = oils.map((o) => o.circuit).filter((c) => (c === id ? on : before.includes(c)));
    // An empty list would mean "as usual" to the core: one oil at least stays.
    change({ circuits: chosen.length ? chosen : [id] });
  };
  return ticks(
    'plan.circuits',
    oils.map(({ circuit, role, today: on }) => ({ id: circuit, label: t(role), on })),
    pick,
  );
}

/** What is cleaned at some changes only. */
function alsos(bench, list, change) {
  const pick = (id, on) => {
    const others = (bench.also ?? []).filter((other) => other !== id);
    change({ also: on ? [...others, id] : others });
  };
  const lines = list.map(({ word, values, count }) => ({
    id: values.id,
    label: t(word, values),
    on: count,
  }));
  return ticks('plan.also', lines, pick);
}
