import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { settings } from '../settings.js';
import { t } from '../words.js';
import { finding, findings } from './figure.js';

/** The bench: calculations on their own. */
export async function bench(_, app) {
  let answer = null;
  const convert = async (event) => {
    event.preventDefault();
    answer = await call('convert', {
      text: event.target.elements.text.value,
      system: settings.system,
    });
    app.redraw();
  };
  return {
    name: 'bench',
    tab: 'bench',
    title: t('bench.title'),
    draw: () => draw(convert, answer),
  };
}

function draw(convert, answer) {
  return html`
    <h1 tabindex="-1">${t('bench.title')}</h1>
    <section>
      <h2>${t('bench.convert')}</h2>
      <form class="ask" @submit=${convert}>
        <label for="convert-text"
          >${t('bench.convert.label')} <small>${t('bench.convert.hint')}</small></label
        >
        <div class="entry">
          <input
            id="convert-text"
            name="text"
            autocomplete="off"
            autocapitalize="none"
            maxlength="40"
            enterkeyhint="done"
          />
          <button type="submit">${t('bench.convert')}</button>
        </div>
      </form>
      <div aria-live="polite">${answer ? result(answer) : nothing}</div>
    </section>
  `;
}

function result({ ok, findings: refused }) {
  if (!ok) return findings(refused);
  return html`
    ${(ok.notes ?? []).map(finding)}
    <ul class="values" aria-label=${t('bench.convert.result')}>
      ${ok.texts.map((value) => html`<li class="value">${value}</li>`)}
    </ul>
  `;
}
