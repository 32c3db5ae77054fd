import { html, nothing } from 'lit-html';
import { file } from '../data.js';
import { address } from '../router.js';
import * as store from '../store.js';
import { t } from '../words.js';

/** The first screen: the open jobs, then the bikes. It needs no core. */
export async function bikes(_, app) {
  const { bikes: list = [] } = await file('bikes.json');
  const screen = {
    name: 'bikes',
    tab: 'bikes',
    title: t('nav.bikes'),
    draw: () => draw(list, screen.open),
  };
  // The bikes don't wait for the store.
  store
    .jobs()
    .then((jobs) => {
      screen.open = jobs.filter((job) => !job.summary.finished);
      app.redraw();
    })
    .catch(() => app.fail('store.failed'));
  return screen;
}

function draw(list, open = []) {
  return html`
    <header class="brand">
      <p class="name">${t('app.name')}</p>
      <p>${t('app.tagline')}</p>
    </header>
    ${open.length ? openJobs(open) : nothing}
    <h1 tabindex="-1">${t('bikes.title')}</h1>
    ${
      list.length
        ? html`<ul class="bikes">
            ${list.map(bike)}
          </ul>`
        : html`<p>${t('bikes.none')}</p>`
    }
  `;
}

function openJobs(open) {
  return html`<section class="open-jobs" aria-label=${t('bikes.open-jobs')}>
    ${open.map(
      ({ id, name, summary }) =>
        html`<a class="resume" href=${address('job', id)}>
          <strong>${t('bikes.resume')}: ${name}</strong>
          ${
            summary.steps
              ? html`<span
                  >${t('bikes.progress', { done: summary.done, steps: summary.steps })}</span
                >`
              : nothing
          }
        </a>`,
    )}
  </section>`;
}

function bike({ id, name, years, layout, invented, oils = [], gaps }) {
  const [oil] = oils;
  return html`<li>
    <a href=${address('bike', id)}>
      <span class="line"
        ><strong>${name}</strong>
        <span class="years">${years}</span>
        ${invented ? html`<span class="tag">${t('example')}</span>` : nothing}</span
      >
      <span class="what">${t(layout)}</span>
      ${oil?.due?.texts ? html`<span class="oil">${oil.due.texts[0]} <small>${oil.grades?.[0]}</small></span>` : nothing}
      ${gaps ? html`<span class="gaps">? ${t(gaps === 1 ? 'bikes.gap' : 'bikes.gaps', { count: gaps })}</span>` : nothing}
    </a>
  </li>`;
}
