import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { limits } from '../core/limits.js';
import { address, go } from '../ui/address.js';
import { anew } from '../ui/anew.js';
import { radios } from '../ui/choice.js';
import { mark, textsOf } from '../ui/figure.js';
import { findings } from '../ui/findings.js';
import { fitted, roomFor } from '../ui/letters.js';
import { said, tied } from '../ui/said.js';
import { stillOpen } from '../still-open/strip.js';
import { t, text } from '../words/catalogue.js';
import { stops } from '../trouble/in-job.js';

/** @import { Finding, PageAsk, PageLine, Told } from '../core/core.d.ts' */

/** The job on one page, or one of its stages: what was done is ticked, and kept in one go. */
export function page(job, control) {
  control.page ??= new Page(job, control);
  return anew(control.page.field, control.page.draw());
}

const yes = 'yes';
const no = 'no';

/** @type {(a: Partial<Told>, b: Partial<Told>) => boolean} */
const same = (a, b) =>
  a.line === b.line && (a.what ?? '') === (b.what ?? '') && (a.of ?? '') === (b.of ?? '');

class Page {
  #job;
  #control;
  #stage;
  /** @type {PageLine[] | undefined} nothing before the core has answered */
  #lines;
  #finished = false;
  #state; // of the job, of which these lines are
  /** @type {{ told: Told, finding: Finding }[]} what was found when it was kept last */
  #found = [];

  constructor(job, control) {
    this.#job = job;
    this.#control = control;
    this.#stage = control.view === 'stage' ? (control.stepId ?? '') : '';
  }

  /** The name of what is filled in, among the drafts of the job. */
  get field() {
    return this.#stage ? `page-${this.#stage}` : 'page';
  }

  /** @type {Told[]} what is filled in and not kept */
  get #told() {
    const kept = this.#control.drafts.get(this.field);
    return Array.isArray(kept) ? kept : [];
  }

  async #load() {
    const { state } = this.#job;
    this.#state = state;
    const answer = await this.#job.page(this.#stage);
    if (this.#state !== state) return;
    this.#lines = answer?.lines ?? [];
    this.#finished = Boolean(answer?.finished);
    this.#control.app.redraw();
  }

  /** @type {(of: Partial<Told>) => Told | undefined} */
  #of = (of) => this.#told.find((told) => same(told, of));

  /**
   * Fills something in, or takes out what was filled in.
   *
   * @param {Told} told
   * @param {boolean} [stays]
   */
  #fill(told, stays = true) {
    const others = this.#told.filter((other) => !same(other, told));
    const { drafts, app } = this.#control;
    const list = stays ? [...others, told] : others;
    if (list.length) drafts.put(this.field, list);
    else drafts.drop(this.field);
    this.#found = this.#found.filter((f) => !same(f.told, told));
    app.redraw();
  }

  /** Keeps all that is filled in; all of it or, where something is refused, nothing. */
  async #keep(finish, next) {
    const told = [...this.#told, ...(finish ? [{ line: 'finish' }] : [])];
    const { app } = this.#control;
    if (!told.length) {
      if (next) go(...this.#stageOf(next));
      else app.say(t('page.nothing'));
      return;
    }
    const found = await this.#control.tell(this.#stage, told, [this.field]);
    if (!found) return;
    this.#found = found.map((one) => ({
      told: told[Number(one.where?.split('/')[2])] ?? { line: '' },
      finding: one,
    }));
    const refused = found.some(({ grade }) => grade === 'refuse');
    app.say(t(refused ? 'page.refused' : 'page.kept'));
    if (refused) document.querySelector('.job-page .findings')?.scrollIntoView({ block: 'center' });
    else if (finish) go('record', this.#job.record.id);
    else if (next && !found.length) go(...this.#stageOf(next));
  }

  #stageOf = (stage) => ['job', this.#job.record.id, 'stage', stage];

  draw() {
    const job = this.#job;
    if (this.#state !== job.state) this.#load();
    const lines = this.#lines ?? [];
    const parts = [...new Set(lines.map(({ part }) => part))];
    return html`
      ${this.#head()} ${stillOpen(job)} ${stops(job, this.#control)}
      <h1 tabindex="-1">${this.#stage ? t(`stage.${this.#stage}`) : t('page.title')}</h1>
      ${this.#stage ? this.#stages() : nothing}
      <p class="awake">${t('page.how')}</p>
      <div class="job-page">
        ${parts.map((part) =>
          this.#part(
            part,
            lines.filter((line) => line.part === part),
          ),
        )}
        ${findings(this.#found.filter(({ told }) => !lines.some(({ id }) => id === told.line)).map((f) => f.finding))}
      </div>
      ${this.#actions()}
    `;
  }

  #head() {
    const { id } = this.#job.record;
    const { stages = [] } = this.#job.state;
    const open = stages.find((s) => (s.done ?? 0) < (s.steps ?? 0)) ?? stages[0];
    return html`<header class="bar">
      <a href=${address('job', id)} class="all">${t('page.steps')}</a>
      ${
        this.#stage
          ? html`<a href=${address('job', id, 'page')} class="all">${t('page.title')}</a>`
          : html`<a href=${address(...this.#stageOf(open?.stage))} class="all"
              >${t('page.stage')}</a
            >`
      }
    </header>`;
  }

  /** The stages, each a page. */
  #stages = () =>
    html`<nav class="page-stages" aria-label=${t('page.stage')}>
      ${this.#job.state.stages.map(
        ({ stage, done = 0, steps = 0 }) =>
          html`<a
            href=${address(...this.#stageOf(stage))}
            aria-current=${stage === this.#stage ? 'page' : nothing}
            >${t(`stage.${stage}`)} <small>${done}/${steps}</small></a
          >`,
      )}
    </nav>`;

  /** @type {(part: string, lines: PageLine[]) => unknown} */
  #part(part, lines) {
    const plain = lines.filter(({ steps, asks }) => steps && !asks);
    return html`<section data-part=${part}>
      <h2>${t(`page.part.${part}`)}</h2>
      ${plain.length > 1 && part !== 'opened' ? this.#all(plain) : nothing}
      <ul>
        ${lines.map((line) => this.#line(line))}
      </ul>
    </section>`;
  }

  /** One tick for all that are no more than ticks. */
  #all(lines) {
    const on = lines.every((line) => this.#ticked(line));
    const change = () => lines.forEach((line) => this.#tick(line, !on));
    return html`<label class="tick all-of-them">
      <input type="checkbox" .checked=${live(on)} @change=${change} />
      <span>${t('page.all', { count: lines.length })}</span>
    </label>`;
  }

  /** @param {PageLine} line */
  #ticked(line) {
    const { id, steps = [], done = 0, asks = [] } = line;
    const answered = asks.some(({ what, of }) => {
      const told = this.#of({ line: id, what, of });
      return told && (told.value || told.manner);
    });
    return (
      answered || (this.#of({ line: id })?.value ?? (done === steps.length ? yes : no)) === yes
    );
  }

  /** @type {(line: PageLine, on: boolean) => void} */
  #tick({ id, steps = [], done = 0, asks = [] }, on) {
    if (!on)
      for (const { what, of } of asks)
        if (this.#of({ line: id, what, of })?.manner) this.#fill({ line: id, what, of }, false);
    this.#fill({ line: id, value: on ? yes : no }, on ? done < steps.length : done > 0);
  }

  /** @param {PageLine} line */
  #line(line) {
    const { id, word, values, steps, done = 0, figures = [], asks = [], looks } = line;
    const title = t(word, values);
    const some = steps && done > 0 && done < steps.length;
    const beside = figures.filter((f) => f.texts && !asks.some((a) => a.card === f.texts?.[0]));
    return html`<li>
      ${
        steps
          ? html`<label class="tick">
              <input
                type="checkbox"
                .checked=${live(this.#ticked(line))}
                @change=${({ target }) => this.#tick(line, target.checked)}
              />
              <span>${title}</span>
            </label>`
          : asks.length > 1 || asks[0]?.choice
            ? html`<h3>${title}</h3>`
            : nothing
      }
      ${some ? html`<p class="kept">${t('page.told.part', { done, count: steps.length })}</p>` : nothing}
      ${beside.length ? html`<p class="beside">${beside.map((f) => html`<span>${t(f.name)} <b>${textsOf(f)[0]}</b> ${mark(f)}</span>`)}</p>` : nothing}
      ${asks.map((ask) => this.#ask(line, ask))}
      ${looks && asks.length ? this.#looks(looks) : nothing}
      ${line.part === 'rest' ? this.#which(steps) : nothing} ${this.#about({ line: id })}
    </li>`;
  }

  /** @type {(of: Partial<Told>, id?: string) => unknown} what was found about one thing that was filled in */
  #about = (of, id = '') => said(id, this.#foundOf(of));

  /** @type {(of: Partial<Told>) => Finding[]} */
  #foundOf = (of) => this.#found.filter(({ told }) => same(told, of)).map(({ finding }) => finding);

  /** @type {(line: PageLine, ask: PageAsk) => unknown} */
  #ask(line, ask) {
    const { what, of } = ask;
    const own = { line: line.id, what, of };
    const told = this.#of(own);
    const kept = ask.texts ?? (ask.answer ? [this.#answer(ask)] : undefined);
    return html`<div class="page-ask" data-alone=${!line.steps && line.asks?.length === 1}>
      ${ask.choice ? this.#choice(line, ask, own, told) : this.#number(line, ask, own, told)}
      ${
        kept
          ? html`<p class="kept">
              ✓ ${t('page.told', { value: kept.map(text).join(' · ') })}
              ${ask.manners?.map((word) => html`<small>${t(word)}</small> `)}
            </p>`
          : nothing
      }
      ${
        kept || (ask.choice && told)
          ? html`<button
              type="button"
              class="quiet"
              aria-pressed=${told?.value === '' && !told.manner}
              @click=${() => this.#fill({ ...own, value: '' }, kept && !told)}
            >
              ${t('page.take-back')}
            </button>`
          : nothing
      }
      ${this.#about(own, this.#idOf(line, ask))}
    </div>`;
  }

  /** @param {PageAsk} ask */
  #answer({ answer, choice }) {
    const { verdict } = this.#job.state;
    return answer && choice?.includes(answer) ? t(`seen.${answer}`) : t(verdict || 'not-told');
  }

  #choice(line, ask, own, told) {
    const { what } = ask;
    const value = told ? told.value : ask.answer;
    return radios(
      `ask.${what}`,
      what,
      value,
      ask.choice,
      (chosen) => this.#fill({ ...own, value: chosen }),
      `${line.id}-${ask.of ?? ''}`,
      this.#foundOf(own).length ? `${this.#idOf(line, ask)}-said` : '',
    );
  }

  /** @type {(line: PageLine, ask: PageAsk) => string} the id of what is asked there */
  #idOf = ({ id }, { what, of }) => `${this.field}-${id}-${what}${of ? `-${of}` : ''}`;

  #number(line, ask, own, told) {
    const id = this.#idOf(line, ask);
    const asCard = told?.manner === 'as-card';
    const type = ({ target }) => {
      const value = fitted(target);
      this.#fill({ ...own, value }, Boolean(value.trim()));
    };
    return html`
      ${
        ask.card
          ? html`<button
              type="button"
              class="quiet as-card"
              aria-pressed=${asCard}
              @click=${() => this.#fill({ ...own, manner: 'as-card' }, !asCard)}
            >
              ${t('page.as-card', { value: ask.card })}
            </button>`
          : nothing
      }
      <label for=${id}
        >${line.steps || line.asks.length > 1 ? t(`ask.${ask.what}`) : t(line.word, line.values)}
        <small>${t('ask.unit', { unit: ask.unit })}</small></label
      >
      <input
        id=${id}
        inputmode="text"
        autocomplete="off"
        autocapitalize="none"
        .value=${live(told?.value ?? '')}
        ${tied(id, this.#foundOf(own))}
        @input=${type}
      />
      ${roomFor(id, limits.reading)}
    `;
  }

  /** The steps at which all that came out is told. */
  #looks = (looks) =>
    html`<p>${t('page.else')}</p>
      <ul class="page-looks">
        ${looks.map((id) => html`<li>${this.#link(id)}</li>`)}
      </ul>`;

  #which = (steps) =>
    html`<details>
      <summary>${t('page.which')}</summary>
      <ul>
        ${steps.map((id) => html`<li>${this.#link(id)}</li>`)}
      </ul>
    </details>`;

  #link(id) {
    const { word, values } = this.#job.step(id);
    return html`<a href=${address('job', this.#job.record.id, 'step', id)}>${t(word, values)}</a>`;
  }

  #actions() {
    const { stages = [] } = this.#job.state;
    const at = stages.findIndex(({ stage }) => stage === this.#stage);
    const next = this.#stage && stages.slice(at + 1).find(({ steps = 0 }) => steps > 0)?.stage;
    const onward = next || (!this.#stage && !this.#finished);
    return html`<div class="actions two-ways">
      ${
        next
          ? html`<button type="button" class="main" @click=${() => this.#keep(false, next)}>
              ${t('page.keep-next', { stage: t(`stage.${next}`) })}
            </button>`
          : nothing
      }
      ${
        onward && !next
          ? html`<button type="button" class="main" @click=${() => this.#keep(true)}>
              ${t('page.keep-finish')}
            </button>`
          : nothing
      }
      <button type="button" class=${onward ? 'quiet' : 'main'} @click=${() => this.#keep(false)}>
        ${t('page.keep')}
      </button>
    </div>`;
  }
}
