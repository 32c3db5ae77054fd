// What a phone was told to keep, and what it says that it has kept. An entry is a
// text: what it says, and in which job. One that was begun when the phone died may be
// there or not, and once at most; one that the page said it has kept is there as many
// times as it was made.

/** The entries of one phone. */
export class Ledger {
  /** @type {Map<string, number>} how often each must be there */
  #made = new Map();
  /** @type {Map<string, number>} how often each may be there besides */
  #begun = new Map();
  /** @type {{ field: string, text: string, since: number } | null} what was typed last and not kept */
  draft = null;
  made = 0;

  /** Notes that an entry may be written from now on. */
  begin(entry) {
    this.#begun.set(entry, (this.#begun.get(entry) ?? 0) + 1);
  }

  /** Notes that the page said of an entry that was begun: it is kept. */
  kept(entry) {
    this.#begun.set(entry, this.#begun.get(entry) - 1);
    this.#made.set(entry, (this.#made.get(entry) ?? 0) + 1);
    this.made++;
  }

  /** Whether an entry must be there. */
  has(entry) {
    return this.#made.has(entry);
  }

  /**
   * Compares with what is there, a list of entries: {lost, doubled}, lists of entries.
   * From here on what is there is what must be there.
   *
   * @param {string[]} there
   */
  compare(there) {
    const counts = new Map();
    for (const entry of there) counts.set(entry, (counts.get(entry) ?? 0) + 1);
    const lost = [];
    const doubled = [];
    for (const entry of new Set([...this.#made.keys(), ...counts.keys()])) {
      const [made, count] = [this.#made.get(entry) ?? 0, counts.get(entry) ?? 0];
      const most = made + (this.#begun.get(entry) ?? 0);
      for (let n = count; n < made; n++) lost.push(entry);
      for (let n = most; n < count; n++) doubled.push(entry);
    }
    this.#made = counts;
    this.#begun.clear();
    return { lost, doubled };
  }
}
