import { costsOf } from '../bill/costs.js';
import { factsOf, tell } from '../store/facts.js';
import { Drafts, jobScope } from '../store/drafts.js';
import { saveSetting, setting } from '../store/store.js';
import { newId } from '../site/new-id.js';
import { t } from '../words/catalogue.js';
import { asking } from './state.js';

/** @import { Finding, VisitAnswer } from '../core/core.d.ts' */

/** The visit of a job on the screen: what was told, what stands in fields, what is told next. */
export class Account {
  /** @type {VisitAnswer | undefined} nothing where the core can't be had */
  state;
  /** @type {Drafts} */
  drafts;
  currency = ''; // that which amounts are typed in, as long as no other is
  /** @type {Map<string, Finding[]>} what was found, by the part of the screen */
  found = new Map();
  undone = ''; // id of the undo that came last here, and can be taken back
  #ask;

  constructor(job, app) {
    this.job = job;
    this.app = app;
  }

  static async open(job, app) {
    const account = new Account(job, app);
    account.drafts = await Drafts.open(jobScope(job.record.id, 'visit'));
    await account.load();
    return account;
  }

  /** Reads the facts anew. */
  async load() {
    this.#ask = asking(this.job, await costsOf(this.job));
    const facts = await this.app.attempt(() => factsOf('visit', this.job.record.id));
    this.state = facts && (await this.#ask(facts)).ok;
    const { most, troubles = [] } = this.state ?? {};
    const told = [most, ...troubles.map(({ price }) => price)].find(Boolean);
    this.currency = told?.currency ?? (await usualCurrency());
    this.app.redraw();
  }

  /** The question of that name. */
  question(name) {
    const { asks = [], others = [] } = this.state ?? {};
    return [...asks, ...others].find((question) => question.name === name);
  }

  /** What was told of one thing at arrival, as it stands. */
  said(name) {
    return this.state?.said?.find((s) => s.name === name);
  }

  /** What stands in a field: what is typed there, else `kept`. */
  typed(field, kept = '') {
    return this.drafts.get(field) ?? kept;
  }

  /**
   * Tells something; what was found about it stands at `place`. Resolves to whether it was
   * kept.
   *
   * @param {{ [member: string]: any }} fact
   * @param {string} place
   * @param {{ photo?: any, fields?: string[], said?: string }} [more] `fields` are those whose
   *   drafts it holds, `said` is a word id
   */
  async tell(fact, place, { photo, fields = [], said = 'visit.kept' } = {}) {
    const id = newId();
    const drafts = fields.map((field) => this.drafts.key(field));
    const found = await this.app.attempt(
      () =>
        tell('visit', this.job.record.id, /** @type {any} */ ({ ...fact, id }), {
          check: (facts) => this.#ask(facts, true),
          photo,
          drafts,
        }),
      'job.not-saved',
    );
    const kept = Boolean(found) && !found.some(({ grade }) => grade === 'refuse');
    this.found.set(place, found ?? []);
    if (kept) this.undone = fact.kind === 'undo' ? id : '';
    if (kept && fact.signs?.currency) await this.#noteCurrency(fact.signs.currency);
    await this.load();
    this.app.say(kept && said ? t(said) : '');
    return kept;
  }

  /** What was typed once is proposed from then on, here as on bills. */
  async #noteCurrency(currency) {
    this.drafts.drop('currency');
    const kept = await setting('bill').catch(() => undefined);
    if (!kept?.currency) await saveSetting('bill', { ...kept, currency }).catch(() => {});
  }

  /** Takes a fact back, also an undo. */
  undo(id, said = 'job.undone') {
    return this.tell({ kind: 'undo', what: id }, 'undo', { said });
  }
}

const usualCurrency = async () => (await setting('bill').catch(() => undefined))?.currency ?? '';
