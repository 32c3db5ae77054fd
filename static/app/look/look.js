import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { settings } from '../store/settings.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { Fields } from '../ui/fields.js';
import { draftMark } from '../ui/draft-mark.js';
import { said } from '../ui/said.js';
import { own, setOwn } from '../site/own.js';
import { Ruler } from './ruler.js';
import { judged, summed } from './verdict.js';

/** Fetches what a look needs: its words, and the fields of the signs. */
export async function looks() {
  await loadWordsOf('bench').catch(() => {}); // the job goes on without
  const { ok } = await call('forms', { system: settings.system });
  return ok?.forms?.find(({ op }) => op === 'debris');
}

/** What a step asks for that looks at what came out, and what one that sums up has to say. */
export function look(job, step, control) {
  if (step.sums) return summed(job);
  if (!step.look || !control.forms) return nothing;
  if (control.look?.step !== step) control.look = new Look(job, step, control);
  return control.look.draw();
}

/** What a form holds, as signs: what is ticked is told by "yes". */
const signsOf = (values) =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, value === true ? 'yes' : value]),
  );

/** Signs as a form holds them: of what can be ticked, no is nothing. */
const valuesOf = (signs, fields) =>
  Object.fromEntries(
    fields
      .map(({ name, kind }) => [name, kind, own(signs, name)])
      .filter(([, kind, sign]) => sign && (kind !== 'yes' || sign === 'yes'))
      .map(([name, kind, sign]) => [name, kind === 'yes' || sign]),
  );

/** The signs in a text that was written down. */
function signsIn(text) {
  try {
    return Object(JSON.parse(text));
  } catch {
    return {};
  }
}

/**
 * One look: what was seen, its verdict as soon as it is entered, and a tap that keeps
 * it. To the controller it is a field that holds its signs as text.
 */
class Look {
  #job;
  #control;
  #form;
  #fields;
  #ruler;
  #trial = null; // the look as the core judges it, not kept yet
  #asked = 0;
  #notMore = false;
  #of; // id of the event whose signs are shown

  constructor(job, step, control) {
    this.step = step;
    this.#job = job;
    this.#control = control;
    const { op, fields } = control.forms;
    this.#form = { op, fields: step.look.map((sign) => fields.find((f) => f.name === sign)) };
    this.#fill({});
    this.#ruler = new Ruler(control.app, (size) => {
      const name = this.#measured();
      if (!name) return;
      setOwn(this.#fields.values, name, size);
      this.#changed();
    });
    control.restore(this, () => this.#event());
  }

  get id() {
    return `look-${this.step.id}`;
  }

  get form() {
    return document.getElementById(this.id);
  }

  focus = () => this.form?.querySelector('select')?.focus();

  /** What was entered, as text. */
  get value() {
    return JSON.stringify(this.#signs());
  }

  /** Takes back what was entered when the screen was left; nothing: it is saved now. */
  set value(text) {
    this.#trial = null;
    if (!text) return;
    this.#fill(signsIn(text));
    this.#judge();
  }

  /** @param {{ [name: string]: string }} signs */
  #fill({ more, ...signs }) {
    this.#notMore = more === 'no';
    const values = this.#notMore || !more ? signs : { ...signs, more };
    this.#fields = new Fields(
      this.#form,
      valuesOf(values, this.#form.fields),
      () => this.#changed(),
      () => this.#typing(),
    );
  }

  /** Which of the questions the ruler answers, as things stand. */
  #measured = () => ['size', 'depth'].find((name) => this.#fields.asks(name));

  #kept() {
    return this.#job.state.looks?.find(({ step }) => step === this.step.id);
  }

  #signs() {
    const signs = signsOf(this.#fields.given());
    return this.#notMore ? { ...signs, more: 'no' } : signs;
  }

  #event() {
    return { kind: 'look', step: this.step.id, signs: this.#signs() };
  }

  #typing() {
    const content = this.#fields.empty() && !this.#kept() ? '' : this.value;
    this.#control.type(this, () => this.#event(), content);
  }

  async #changed() {
    this.#typing();
    await this.#judge();
  }

  async #judge() {
    const asked = ++this.#asked;
    const state = await this.#job.try(this.#event());
    if (asked !== this.#asked) return; // something else was entered meanwhile
    this.#trial = state?.looks?.find(({ step }) => step === this.step.id) ?? null;
    this.#control.app.redraw();
  }

  async #save(event) {
    event.preventDefault();
    if (!this.#control.typed.has(this)) return; // the Enter key, with nothing new
    this.#asked++;
    await this.#control.saveTyped(this, this.#event(), t('look.kept'));
    this.#control.app.redraw();
  }

  draw() {
    const open = this.#control.typed.has(this);
    const kept = this.#kept();
    if (!open && kept?.id !== this.#of) this.#fill(kept?.signs ?? {}); // also after an undo
    this.#of = kept?.id;
    const look = open ? this.#trial : kept;
    const measured = this.#measured();
    return html`<section class="look">
      <form id=${this.id} @submit=${(event) => this.#save(event)} novalidate>
        <h2>${t('look.title')}</h2>
        ${this.#fields.draw([])}
        ${measured ? this.#ruler.draw(own(this.#fields.values, measured)) : nothing}
        <div class="judged" aria-live="polite">
          ${look ? judged(look) : nothing} ${look ? this.#comparing(look) : nothing}
        </div>
        ${said(
          '',
          this.#control.findingsAbout((e) => e.kind === 'look' && e.step === this.step.id),
        )}
        ${draftMark(this.#control.standing(this.id))}
        ${open ? html`<button type="submit" class="main">${t('look.keep')}</button>` : nothing}
        ${!open && look ? html`<p class="kept">✓ ${t('look.kept')}</p>` : nothing}
      </form>
    </section>`;
  }

  /** The person's own answer to what the comparison says. */
  #comparing({ mayDeny, recurs }) {
    if (!mayDeny) return nothing;
    const turn = () => {
      this.#notMore = !this.#notMore;
      this.#changed();
    };
    return html`<button type="button" class="quiet" @click=${turn}>
      ${t(this.#notMore ? 'look.as-compared' : recurs ? 'look.not-again' : 'look.not-more')}
    </button>`;
  }
}
