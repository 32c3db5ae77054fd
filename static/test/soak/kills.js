// Many rounds on one phone after the other, and what came of them.
import { Person } from './acts.js';
import { kinds } from './kinds.js';
import { Ledger } from './ledger.js';
import { Phone, startHost } from './phone.js';
import { round } from './round.js';

const names = Object.keys(kinds);
const roundsOfAPhone = 60; // then a fresh one, whose store is small again

/** Kills on phones of one host. */
export class Kills {
  /** What was lost or doubled, or else went wrong: sentences. */
  harm = [];
  /** What was typed, stood there for longer than a second and did not come back: sentences. */
  forgotten = [];
  #byKind = Object.fromEntries(
    names.map((name) => [
      name,
      { kills: 0, made: 0, lost: 0, doubled: 0, draftsLost: 0, slowest: 0 },
    ]),
  );
  #rounds = 0;
  #t;
  #chance;
  #host;
  #person;
  #many;

  /** `many` says how many jobs the files have that the person restores. */
  static async begin(t, chance, many = 200) {
    const kills = new Kills();
    kills.#t = t;
    kills.#chance = chance;
    kills.#many = many;
    kills.#host = await startHost(t);
    return kills;
  }

  /** One more round: something is killed, while the person begins with `first`. */
  async next(name = this.#chance.pick(names), first = undefined) {
    const sum = this.#byKind[name];
    if (this.#rounds++ % roundsOfAPhone === 0) this.#person = undefined;
    const where = () => `round ${this.#rounds}, ${name} killed`;
    try {
      this.#person ??= await this.#fresh();
      const { ledger } = this.#person;
      const before = ledger.made;
      const { lost, doubled, draftsLost, resume } = await round(this.#person, name, first);
      sum.kills++;
      sum.made += ledger.made - before;
      sum.lost += lost.length;
      sum.doubled += doubled.length;
      sum.draftsLost += draftsLost.length;
      sum.slowest = Math.max(sum.slowest, resume);
      for (const entry of lost) this.harm.push(`${where()}: lost ${entry}`);
      for (const entry of draftsLost) this.forgotten.push(`${where()}: lost ${entry}`);
      for (const entry of doubled) this.harm.push(`${where()}: doubled ${entry}`);
    } catch (error) {
      this.harm.push(`${where()}: ${error.stack}`);
      this.#person = undefined;
    }
  }

  async #fresh() {
    const phone = await Phone.fresh(this.#t, this.#host);
    return new Person(this.#t, phone, new Ledger(), this.#chance, this.#many);
  }

  /** What came of it, a line for each kind of kill. */
  table() {
    const heads = [
      'killed',
      'kills',
      'made',
      'lost',
      'doubled',
      'drafts lost',
      'slowest resume, ms',
    ];
    const rows = Object.entries(this.#byKind).map(([name, sum]) => [name, ...Object.values(sum)]);
    const widths = heads.map((head) => Math.max(head.length, 14));
    const line = (cells) =>
      cells.map((cell, n) => String(cell)[n ? 'padStart' : 'padEnd'](widths[n])).join('  ');
    return [heads, ...rows].map(line).join('\n');
  }
}
