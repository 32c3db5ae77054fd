import { lettersOfCall } from '../core/batches.js';
import { loadLimits } from '../core/limits.js';
import { besideOf, factsIn, factsOf } from '../store/facts.js';
import * as whole from '../store/whole.js';
import { bounds, Fault } from './bounds.js';
import { canonical, mergedFact } from './merge.js';
import { refused } from './shapes.js';

/** @import { Finding } from '../core/core.d.ts' */
/** @import { Beside, Fact } from '../store/records.d.ts' */
/** @import { Incoming } from './read.js' */

/**
 * What comes of facts: what is to be kept, how many contents came in, are new, and differ from
 * one that is known; and what goes aside.
 *
 * @typedef {object} Taken
 * @property {Fact[]} facts
 * @property {Beside[]} beside
 * @property {number} held
 * @property {number} added
 * @property {number} differing
 * @property {{ incoming: Incoming, why: Finding }[]} unread
 */

/**
 * Facts that come in beside those that are here. What the core makes of one is no matter here:
 * it passes over what it doesn't know, and a later version may know it.
 */
export class FactsIn {
  /** @type {Map<string, { fact?: Fact, beside: string[] }>} what came in before, by its key */
  #came = new Map();
  /** @type {Map<string, number>} letters of each subject, as it becomes */
  #subjects = new Map();
  #letters = 0;

  /**
   * @param {Incoming[]} list
   * @returns {Promise<Taken>}
   */
  async take(list) {
    await loadLimits();
    const most = lettersOfCall() / 2; // of a subject, which goes to the core as a whole
    const here = await Here.of(list.map(({ value }) => value));
    /** @type {Taken} */
    const taken = { facts: [], beside: [], held: 0, added: 0, differing: 0, unread: [] };
    for (const incoming of list) {
      /** @type {Fact} */
      const fact = incoming.value;
      const key = keyOf(fact);
      const before = this.#came.get(key);
      const came = mergedFact(before ?? { beside: [] }, [fact]);
      if (!came.fact && !came.beside.length) continue; // it stood in the file before
      this.#note(key, before, came, incoming.text.length);
      taken.held++;
      const { fact: stands, beside } = mergedFact(here.at(fact), [fact]);
      if (!stands && !beside.length) continue;
      const subject = subjectOf(fact);
      const letters =
        (this.#subjects.get(subject) ?? here.lettersOf(subject)) + canonical(fact).length;
      if (letters > most) {
        taken.unread.push({ incoming, why: refused('fact-overfull') });
        continue;
      }
      this.#subjects.set(subject, letters);
      if (before || here.knows(fact)) taken.differing++;
      else taken.added++;
      here.keep(fact, stands, beside);
    }
    return { ...taken, ...here.kept };
  }

  /** What came is remembered, for as much as there is memory. */
  #note(key, before, came, letters) {
    this.#letters += letters;
    if (this.#letters > bounds.gathered) throw new Fault('restore.too-scattered');
    this.#came.set(key, {
      fact: came.fact ?? before?.fact,
      beside: [...(before?.beside ?? []), ...came.beside],
    });
  }
}

/** @type {(fact: Fact) => string} */
const keyOf = ({ book, of, id }) => JSON.stringify([book, of, id]);

/** What is here of the subjects of some facts, as it becomes. */
class Here {
  /** @type {Map<string, { fact?: Fact, beside: string[] }>} */
  #all = new Map();
  /** @type {Map<string, Fact>} */
  #facts = new Map();
  /** @type {Beside[]} */
  #beside = [];

  /** @param {Fact[]} facts */
  static async of(facts) {
    const here = new Here();
    for (const { book, of } of new Map(facts.map((fact) => [subjectOf(fact), fact])).values()) {
      for (const fact of await factsOf(book, of)) here.#add(fact, { fact, beside: [] });
      for (const row of (await whole.besideOf([besideOf(book, of)])).flat())
        for (const fact of factsIn(row))
          here.#add(fact, { ...here.at(fact), beside: [...here.at(fact).beside, row.text] });
    }
    return here;
  }

  #add(fact, entry) {
    this.#all.set(keyOf(fact), entry);
  }

  /** @param {Fact} fact */
  at(fact) {
    return this.#all.get(keyOf(fact)) ?? { beside: [] };
  }

  /** @param {Fact} fact */
  knows(fact) {
    return this.#all.has(keyOf(fact));
  }

  /** How many letters the facts of a subject have. */
  lettersOf(subject) {
    const own = [...this.#all.values()].flatMap(({ fact, beside }) =>
      fact && subjectOf(fact) === subject ? [canonical(fact), ...beside] : [],
    );
    return own.reduce((sum, { length }) => sum + length, 0);
  }

  /**
   * @param {Fact} fact that came in
   * @param {Fact | undefined} stands where it is another now
   * @param {string[]} beside texts that are new beside it
   */
  keep(fact, stands, beside) {
    const before = this.at(fact);
    const { book, of, id } = fact;
    this.#add(fact, { fact: stands ?? before.fact, beside: [...before.beside, ...beside] });
    if (stands) this.#facts.set(keyOf(fact), stands);
    for (const text of beside)
      this.#beside.push({ job: besideOf(book, of), kind: 'fact', id, text });
  }

  /** What is to be kept. */
  get kept() {
    return { facts: [...this.#facts.values()], beside: this.#beside };
  }
}

/** @type {(fact: Fact) => string} */
const subjectOf = ({ book, of }) => besideOf(book, of);
