// Several phones write, change each other's records as an enemy would, and exchange
// backups in any order: in the end all know the same, and on each what it wrote itself
// counts until a person decides.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { canonical } from '../../app/backup/merge.js';
import { readBackup, restore } from '../../app/backup/restore.js';
import { makeBackup } from '../../app/backup/write.js';
import { call } from '../../app/core/client.js';
import { freshBikes } from '../../app/store/bikes.js';
import { Job } from '../../app/store/job.js';
import { Chance, seedFrom } from '../chance.js';
import { shown } from './laws.js';
import { held, MemoryPhone, store, whole } from './phone.js';

const seed = seedFrom(process.env.SEED ?? '12');
const rounds = Number(process.env.ROUNDS ?? 20);

const card = JSON.parse(
  readFileSync(new URL('../../../testdata/card-minimal.json', import.meta.url), 'utf8'),
);
const jobs = ['one', 'two'];
const steps = ['identify', 'lay-out', 'tray', 'no-longer-here'];
const time = (n) => new Date(Date.parse('2026-11-20T10:00:00.000Z') + 1000 * n).toISOString();

/** Phones that exchange what they know, and what each of them wrote itself. */
class Phones {
  #chance;
  #count = 0;
  /** @type {{ phone: MemoryPhone, wrote: Map<string, string> }[]} */
  all = [];
  history = []; // for the message, when a law is broken

  constructor(chance, many) {
    this.#chance = chance;
    this.all = Array.from({ length: many }, () => ({
      phone: new MemoryPhone(),
      wrote: new Map(),
    }));
  }

  /** One phone does something, or two exchange. */
  async act() {
    const name = this.#chance.pick([
      'write',
      'contradict',
      'contradict',
      'record',
      'card',
      'tell',
      'tell',
      'give',
    ]);
    await this[name]();
  }

  #pick() {
    const n = this.#chance.below(this.all.length);
    return [n, this.all[n]];
  }

  /** The record of a job as each phone makes it, unless told otherwise. */
  #record(id, figure = 25) {
    const own = structuredClone(card);
    own.id = `bike-${id}`;
    own.bolts[0].torque.value = figure;
    return {
      id,
      name: 'Plainford One',
      started: time(0),
      card: own,
      bench: { system: 'metric' },
      summary: {},
    };
  }

  async #put(phone, job, event) {
    const here = (await whole.recordsOf('jobs', [job]))[0];
    const record = here ?? this.#record(job);
    if (!here) phone.wrote.set(`job ${job}`, contentOf(record));
    await whole.putAll({ jobs: [record], events: [{ job, ...event }] });
    phone.wrote.set(`${job} ${event.id}`, canonical(event));
  }

  #event(id) {
    const n = ++this.#count;
    return this.#chance.pick([
      {
        id,
        time: time(n),
        seq: n,
        kind: 'note',
        step: this.#chance.pick(steps),
        text: `Note ${n}.`,
      },
      { id, time: time(n), kind: 'done', step: this.#chance.pick(steps) },
      {
        id,
        time: time(n),
        kind: 'reading',
        step: 'identify',
        what: 'odometer',
        value: `${12_000 + n} km`,
      },
      { id, time: time(9e6), kind: 'note', step: 'identify', text: `Note ${n} of another year.` },
    ]);
  }

  /** A phone adds an event of its own. */
  async write() {
    const [n, phone] = this.#pick();
    await phone.phone.takeUp();
    const event = this.#event(`e${n}-${this.#count}`);
    this.history.push(`${n} writes ${event.id}`);
    await this.#put(phone, this.#chance.pick(jobs), event);
  }

  /** A phone has another content under an id that other phones may use too. */
  async contradict() {
    const [n, phone] = this.#pick();
    const [job, id] = [this.#chance.pick(jobs), `shared-${this.#chance.below(4)}`];
    if (phone.wrote.has(`${job} ${id}`)) return;
    await phone.phone.takeUp();
    if ((await held()).events.has(JSON.stringify([job, id]))) return;
    this.history.push(`${n} writes ${id} of ${job} in its own way`);
    await this.#put(phone, job, this.#event(id));
  }

  /** A phone that doesn't know a job has it with a card of its own. */
  async record() {
    const [n, phone] = this.#pick();
    const id = this.#chance.pick(jobs);
    await phone.phone.takeUp();
    if ((await whole.recordsOf('jobs', [id]))[0]) return;
    const record = this.#record(id, 25 + n);
    this.history.push(`${n} has ${id} with another card`);
    phone.wrote.set(`job ${id}`, contentOf(record));
    await whole.putAll({ jobs: [record] });
  }

  /** A phone tells something of a bike, under an id that other phones may use too. */
  async tell() {
    const [n, phone] = this.#pick();
    await phone.phone.takeUp();
    const [of, other] = this.#chance.pick([
      ['bike-one', 'bike-two'],
      ['bike-two', 'bike-one'],
    ]);
    const id = this.#chance.pick([`f${n}-${++this.#count}`, `shared-${this.#chance.below(3)}`]);
    if ((await held()).facts.has(JSON.stringify(['bike', of, id]))) return;
    const at = this.#chance.below(9) + 1;
    const told = this.#chance.pick([
      { kind: 'told', what: 'called', value: `Name ${this.#count}` },
      { kind: 'joined', value: other },
      { kind: 'job', what: this.#chance.pick(jobs) },
      { kind: 'undo', what: `shared-${this.#chance.below(3)}` },
    ]);
    this.history.push(`${n} tells ${id} of ${of}: ${told.kind}`);
    const when = { time: time(at), day: '2026-11-20', seq: at };
    await whole.putAll({ facts: [{ book: 'bike', of, id, ...when, ...told }] });
    await freshBikes();
  }

  /** A phone changes its own card. */
  async card() {
    const [n, phone] = this.#pick();
    await phone.phone.takeUp();
    const make = `Plainford ${n} ${++this.#count}`;
    const own = { ...card, id: 'own', make };
    const { ok } = await call('cards', { cards: [own], canonical: true });
    const [{ text, place: _, ...bike }] = ok.bikes;
    this.history.push(`${n} changes the card to ${make}`);
    phone.wrote.set('card', canonical(own));
    await store.putCard({
      key: 'own',
      card: own,
      text,
      bike,
      changed: time(this.#count),
      pinned: false,
    });
  }

  /** One phone gives another a backup. */
  async give(from = this.#chance.below(this.all.length), to = this.#chance.below(this.all.length)) {
    if (from === to) return;
    await this.all[from].phone.takeUp();
    const file = await makeBackup({ made: time(1e6), photos: true, plain: true });
    await this.all[to].phone.takeUp();
    this.history.push(`${from} gives to ${to}`);
    await restore(await readBackup(file));
  }

  /** Each gives to each, in some order; through the first, so that all get all. */
  async exchange() {
    const others = this.all.map((_, n) => n).slice(1);
    const shuffled = others.toSorted(() => this.#chance.next() - 0.5);
    for (const n of shuffled) await this.give(n, 0);
    for (const n of shuffled.toReversed()) await this.give(0, n);
  }
}

const contentOf = ({ summary: _, steps: __, ...record }) => canonical(record);

/** All that a phone knows, whether it counts there or stands beside: a sorted list of texts. */
function known({ jobs: records, events, beside, cards, facts }) {
  return [
    ...[...records.values()].map((record) => `job ${contentOf(record)}`),
    ...[...events.values()].map(({ job, ...event }) => `${job} ${canonical(event)}`),
    ...[...beside.values()].map(({ job, kind, text }) =>
      kind === 'job' ? `job ${text}` : `${job} ${text}`,
    ),
    ...[...facts.values()].map((fact) => `stands ${canonical(fact)}`),
    ...[...cards.values()].map((own) => `card ${canonical(own.card)}`),
  ].sort();
}

/** Whose a job is. */
const whose = ({ id, bike, name }) => `${id} ${bike} ${name}`;

/** Asserts that what the phone wrote counts there. */
function ownCounts({ jobs: records, events, cards }, { wrote }, what) {
  for (const [name, text] of wrote) {
    if (name === 'card') {
      assert.equal(canonical(cards.get('own').card), text, `${what}: its card`);
      continue;
    }
    const [job, id] = name.split(' ');
    if (job === 'job') assert.equal(contentOf(records.get(id)), text, `${what}: record of ${id}`);
    else {
      const { job: _, ...event } = events.get(JSON.stringify([job, id]));
      assert.equal(canonical(event), text, `${what}: ${name}`);
    }
  }
}

test(`${rounds} times some phones in any order, with the seed ${seed}: all know the same, and what each wrote counts there`, async () => {
  const chance = new Chance(seed);
  let disputes = 0;
  for (let round = 0; round < rounds; round++) {
    const phones = new Phones(chance, 2 + chance.below(3));
    for (let n = 0; n < 20; n++) await phones.act();
    await phones.exchange();
    const what = () => `round ${round} with the seed ${seed}: ${phones.history.join('; ')}`;
    const all = [];
    const bikes = [];
    for (const { phone } of phones.all) {
      await phone.takeUp();
      all.push(await held());
      bikes.push([await store.bikeRows(), (await store.log()).map(whose).sort()]);
    }
    for (const [n, here] of bikes.entries())
      assert.deepEqual(here, bikes[0], `${what()}\nphone ${n} has other bikes`);
    for (const [n, here] of all.entries()) {
      assert.deepEqual(known(here), known(all[0]), `${what()}\nphone ${n} knows other things`);
      ownCounts(here, phones.all[n], `${what()}\non phone ${n} something else counts`);
    }
    disputes += await decided(phones, what);
  }
  assert.ok(disputes >= rounds / 2, `only ${disputes} disputes in ${rounds} rounds`);
});

/** A person decides on the first phone what counts; then all phones show the same. Gives how much was disputed. */
async function decided(phones, what) {
  let disputes = 0;
  await phones.all[0].phone.takeUp();
  for (const { id } of await store.log()) {
    const job = await Job.open(id);
    for (const { id: of, variants } of job.state.disputed ?? []) {
      disputes++;
      const found = await job.add({ kind: 'choose', of, value: variants[0].digest });
      const refused = found.filter(({ grade }) => grade === 'refuse');
      assert.deepEqual(refused, [], `${what()}\n${of} of ${id} can't be decided`);
    }
  }
  await phones.exchange();
  const screens = [];
  for (const { phone } of phones.all) {
    await phone.takeUp();
    const screen = {};
    for (const { id } of await store.log()) {
      const { state, events, record } = await Job.open(id);
      // Another card on another phone has other words for its steps, and the same events.
      assert.equal(state.summary.events ?? 0, events.length, `${what()}\n${record.id}`);
      screen[id] = shown(state).sort();
    }
    screens.push(screen);
  }
  for (const [n, screen] of screens.entries())
    assert.deepEqual(screen, screens[0], `${what()}\nphone ${n} shows other things`);
  return disputes;
}
