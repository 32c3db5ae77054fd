import { beginning, filled, known, learnt } from './usual.js';
import { call } from '../core/client.js';
import { Job } from '../store/job.js';
import { saveSetting, setting } from '../store/store.js';
import { t } from '../words/catalogue.js';
import { own } from '../site/own.js';

// What is typed and not kept yet, by job and paper: it outlives the screen.
const drafts = new Map();

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

  /** Opens the papers of a job; resolves to undefined when there is no such job. */
  static async open(id) {
    const job = await Job.open(id);
    if (!job?.state) return undefined;
    const { bench } = job.record;
    const bill = new Papers();
    bill.job = job;
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
    this.typed = drafts.get(this.#key()) ?? this.written(what) ?? this.#begin();
    await this.count();
  }

  #key = () => `${this.job.record.id} ${this.what}`;

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
    return drafts.has(this.#key());
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

  /** Takes in that something was typed. */
  change() {
    drafts.set(this.#key(), this.typed);
    return this.count();
  }

  /** Asks the core; an answer that was overtaken is dropped. */
  async count() {
    const asked = ++this.#asked;
    const counted = structuredClone(this.typed);
    const estimate = this.what === 'bill' ? this.paper('estimate')?.text : undefined;
    const { system } = this.job.record.bench;
    const answer = await call('bill', { ...this.typed, estimate, system });
    if (asked === this.#asked) Object.assign(this, { answer, counted });
  }

  /** Saves the paper with the job, and what was typed for the next one; resolves to whether it could. */
  async save() {
    const { typed, what } = this;
    const found = await this.job.add({ kind: 'bill', what, text: JSON.stringify(typed) });
    this.refused = found.filter(({ grade }) => grade === 'refuse');
    if (this.refused.length) return false;
    drafts.delete(this.#key());
    this.#kept = learnt(this.#kept, typed);
    await saveSetting('bill', this.#kept);
    await this.count();
    return true;
  }
}
