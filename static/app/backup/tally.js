/** @import { Finding } from '../core/core.d.ts' */

/** The kinds of records that are counted, in the order in which they are shown. */
export const kinds = ['jobs', 'events', 'facts', 'cards', 'photos', 'settings'];

/** How many records that can't be read are told in a sentence each. */
export const shown = 20;

/**
 * A record that can't be read: what it is, and why.
 *
 * @typedef {{ kind: string, name?: string, time?: string, why: Finding }} Unread
 */

/** What a file holds beside what is here. */
export class Tally {
  /** by kind: how many are in the file, new here, another content of what is here, not to be read */
  counts = new Map(
    [...kinds, 'lines'].map((kind) => [kind, { held: 0, added: 0, beside: 0, unread: 0 }]),
  );
  /** @type {Unread[]} the first of those that can't be read */
  unread = [];
  unreadCount = 0;
  /** of these, how many don't lie aside here already */
  asideAdded = 0;
  /** jobs here that get entries */
  grown = 0;

  /**
   * The counts of a kind; of what is none, those of mere lines.
   *
   * @param {string} kind
   */
  of(kind) {
    const list = this.counts.get(kind) ?? this.counts.get('lines');
    return /** @type {{ held: number, added: number, beside: number, unread: number }} */ (list);
  }

  /**
   * @param {Unread} record
   * @param {boolean} isNew it doesn't lie aside here
   */
  tell(record, isNew) {
    if (isNew) this.asideAdded++;
    this.of(`${record.kind}s`).unread++;
    this.unreadCount++;
    if (this.unread.length < shown) this.unread.push(record);
  }

  /** Whether there is nothing that isn't here already. */
  get nothingNew() {
    return (
      !this.asideAdded && ![...this.counts.values()].some(({ added, beside }) => added + beside)
    );
  }
}
