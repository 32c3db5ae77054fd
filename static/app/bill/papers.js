import { beginning, filled, known, learnt } from './usual.js';
import { call } from '../core/client.js';
import { Drafts, jobScope } from '../store/drafts.js';
import { saveSetting, setting } from '../store/store.js';
import { t } from '../words/catalogue.js';
import { own } from '../site/own.js';

/** The estimate and the bill of a job: what is typed, and what the core makes of it. */
export class Papers {
  job; // the job
  fields; // as the core describes them
  what; // 'estimate' or 'bill'
  typed; // the input of the core's operation
  answer = {};
  counted; // what was typed when it answered
  opened = new Set(); // what stays open on the screen
  refused = []; // why it could not be kept
  #kept; // what the phone remembers
  #proposed;
  #recounted; // counts that a bill doesn't take over from its estimate
  #asked = 0;
  /** @type {Drafts} */
  #drafts; // what is typed and not kept yet, by paper

  /** Opens the papers of a job. */
  static async open(job) {
    const { bench } = job.record;
    const bill = new Papers();
    bill.job = job;
    bill.#drafts = await Drafts.open(jobScope(job.record.id, 'bill'));
    const [forms, lines, kept] = await Promise.all([
      call('forms', { of: 'bill', system: bench.system }),
      call('bill-lines', job.history()),
      setting('bill'),
    ]);
    bill.fields = forms.ok?.forms?.[0].fields;
    bill.#proposed = lines.ok?.lines ?? [];
    bill.#recounted = lines.ok?.recounted ?? {};
    bill.#kept = kept ?? {};
    await bill.turn(job.state.finished ? 'bill' : 'estimate');
    return bill;
  }

  /** Turns to the estimate or to the bill. */
  async turn(what) {
    this.what = what;
    this.typed = this.#drafts.get(what) ?? this.written(what) ?? this.#begin();
    await this.count();
  }

  /** The paper as it was kept last, as it was typed. */
  written(what) {
    try {
      const typed = JSON.parse(this.paper(what)?.text ?? null);
      return typed?.lines?.every((line) => typeof line === 'object' && line) ? typed : undefined;
    } catch {
      return undefined; // another program wrote it
    }
  }

  /** The event that wrote a paper. */
  paper(what) {
    return this.job.state.papers?.find((p) => p.what === what);
  }

  /** Reports whether there is something typed that is not kept. */
  changed() {
    return this.#drafts.get(this.what) !== undefined;
  }

  /** Reports whether somebody has typed anything yet. */
  begun() {
    return this.changed() || Boolean(this.paper(this.what));
  }

  /** A bill begins as its estimate, with the oil that was really poured. */
  #begin() {
    const lines = this.#proposed.map((line) => this.#line(line));
    const estimate = this.what === 'bill' && this.written('estimate');
    if (!estimate) return { ...beginning(this.#kept), lines };
    const { number: _, lines: before, ...others } = estimate; // bills have numbers of their own
    const count = (line) => own(this.#recounted, line.of) ?? line.count;
    return { ...others, lines: before.map((line) => filled({ ...line, count: count(line) })) };
  }

  #line({ word, values }) {
    const { line: kind, count, key: of } = values;
    return filled({ kind, of, text: t(word, values), count, ...known(this.#kept, kind, of) });
  }

  /** Adds an empty line of a kind. */
  add(kind) {
    const word = `bill.kind.${kind}`;
    this.typed.lines = [
      ...(this.typed.lines ?? []),
      filled({ kind, of: word, text: t(word), ...known(this.#kept, kind, word) }),
    ];
    return this.change();
  }

  /** Notes what is typed, at each letter. */
  type() {
    this.#drafts.put(this.what, this.typed);
  }

  /** Takes in that something was entered. */
  change() {
    this.type();
    return this.count();
  }

  /** Asks the core; an answer that was overtaken is dropped. */
  async count() {
    const asked = ++this.#asked;
    const counted = structuredClone(this.typed);
    const estimate = this.what === 'bill' ? this.paper('estimate')?.text : undefined;
    const { system } = this.job.record.bench;
    const answer = await call('bill', { ...this.typed, what: this.what, estimate, system });
    if (asked === this.#asked) Object.assign(this, { answer, counted });
  }

  /** Saves the paper with the job, and what was typed for the next one; resolves to whether it could. */
  async save() {
    const { typed, what } = this;
    const text = JSON.stringify(typed);
    const found = await this.job.add({ kind: 'bill', what, text }, undefined, [
      this.#drafts.key(what),
    ]);
    this.refused = found.filter(({ grade }) => grade === 'refuse');
    if (this.refused.length) return false;
    if (JSON.stringify(this.typed) === text) this.#drafts.drop(what);
    else this.type(); // something else was typed meanwhile
    this.#kept = learnt(this.#kept, typed);
    await saveSetting('bill', this.#kept);
    await this.count();
    return true;
  }
}
