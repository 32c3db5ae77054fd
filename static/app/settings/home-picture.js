import { html, svg } from 'lit-html';
import { t } from '../words/catalogue.js';

// What the ways to the home screen look like: a screen a step, drawn on 84 by 150 units,
// with what is to be tapped under the number of its step. Outlines of where things are, in
// no browser's own looks.

const wide = 84;
const high = 150;
const apart = 34;

/** A thing beside others, at its place. */
const at = (x, y, drawn) => svg`<g transform="translate(${x} ${y})">${drawn}</g>`;

/** Texts and things that don't matter here. */
const dull = (x, y, length) => svg`<path class="dull" d="M${x} ${y}h${length}" />`;

const box = (x, y, w, h, r = 5) =>
  svg`<rect class="edge" x=${x} y=${y} width=${w} height=${h} rx=${r} />`;

/** What is to be tapped, round which the ring goes, and the number of the step beside it. */
const tapped = (n, x, y, toX, toY) =>
  svg`<circle class="ring" cx=${x} cy=${y} r="11" />
    <circle class="spot" cx=${toX} cy=${toY} r="8" />
    <text class="nth" x=${toX} y=${toY + 4.5} text-anchor="middle">${n}</text>`;

/** An arrow out of a tray. */
const shareSign = svg`<path class="sign" d="M-3 -2h-3v8h12v-8h-3M0 2V-7M-3 -4l3 -3l3 3" />`;

/** A screen with an arrow into it. */
const installSign = svg`<path class="sign" d="M-6 -5h12v8h-12zM-3 6h6M0 -8v8M-3 -3l3 3l3 -3" />`;

/** A square with a cross: something more on the home screen. */
const plusSign = svg`<path class="sign" d="M-5 -5h10v10h-10zM0 -2.5v5M-2.5 0h5" />`;

const dots = (dx, dy) =>
  [-1, 0, 1].map((n) => svg`<circle class="dot" cx=${n * dx} cy=${n * dy} r="1.6" />`);

/** A phone or another screen with an app in it. */
const screen = (...drawn) => svg`${box(0, 0, wide, high, 10)} ${drawn}`;

const page = [dull(14, 40, 44), dull(14, 54, 56), dull(14, 68, 50), dull(14, 82, 30)];

/** A wide screen, in the middle of the height. */
const desk = (...drawn) => at(0, 25, svg`${box(0, 0, wide, 92)} ${drawn}`);

const deskPage = [dull(10, 46, 40), dull(10, 58, 52), dull(10, 70, 34)];

/** A list that came up, with the line of the second step at `line`. */
function list(top, line, x = 0, width = wide) {
  const row = (n) => top + 16 + n * 22;
  const here = row(line);
  return [
    box(x, top, width, 94, 8),
    [0, 1, 2, 3].map((n) => (n === line ? '' : dull(x + 12, row(n), width - 40))),
    at(x + width - 16, here, plusSign),
    svg`<path class="this" d="M${x + 12} ${here}h${width - 44}" />`,
    tapped(2, x + width - 16, here, x + width + 2, here - 12),
  ];
}

/** A sheet with the app's sign and name, a switch that is on, and the button that ends it. */
const lastStep = screen(
  box(0, 40, wide, 110, 8),
  box(10, 64, 20, 20),
  dull(38, 74, 34),
  dull(10, 104, 34),
  svg`<rect class="on" x="54" y="97" width="22" height="14" rx="7" /><circle class="knob" cx="69" cy="104" r="5" />`,
  svg`<path class="this" d="M58 52h14" />`,
  tapped(3, 65, 52, 82, 40),
);

const upSheet = screen(dull(14, 20, 44), list(56, 2));
const downSheet = screen(dull(14, 130, 44), list(10, 1, 14, 66));

/** Name of a way -> its screens. */
const pictures = new Map([
  [
    'iphone',
    () => [
      screen(
        page,
        dull(8, 130, 8),
        at(42, 131, shareSign),
        at(70, 131, dots(5, 0)),
        tapped(1, 42, 131, 42, 112),
      ),
      upSheet,
      lastStep,
    ],
  ],
  [
    'ipad',
    () => [
      desk(dull(10, 12, 40), at(70, 13, shareSign), deskPage, tapped(1, 70, 13, 54, 26)),
      upSheet,
      lastStep,
    ],
  ],
  [
    'apple-other',
    () => [
      screen(box(8, 12, 68, 18, 8), at(66, 20, shareSign), page, tapped(1, 66, 20, 50, 34)),
      upSheet,
      lastStep,
    ],
  ],
  [
    'android-chromium',
    () => [
      screen(box(8, 12, 52, 18, 8), at(71, 21, dots(0, 5)), page, tapped(1, 71, 21, 56, 36)),
      downSheet,
    ],
  ],
  [
    'android-gecko',
    () => [
      screen(page, box(8, 120, 52, 18, 8), at(71, 129, dots(0, 5)), tapped(1, 71, 129, 56, 112)),
      upSheet,
    ],
  ],
  [
    'mac',
    () => [
      desk(
        svg`<path class="edge" d="M0 16h84" />`,
        dull(8, 8, 10),
        svg`<path class="this" d="M28 8h12" />`,
        dull(50, 8, 12),
        deskPage,
        tapped(1, 34, 8, 50, 26),
      ),
      at(0, 10, list(10, 2)),
    ],
  ],
  [
    'computer-chromium',
    () => [
      desk(box(6, 8, 72, 16, 8), at(68, 17, installSign), deskPage, tapped(1, 68, 16, 52, 32)),
      desk(
        dull(10, 16, 50),
        dull(10, 32, 40),
        box(34, 56, 40, 18, 9),
        svg`<path class="this" d="M44 65h20" />`,
        tapped(2, 54, 65, 54, 46),
      ),
    ],
  ],
]);

/**
 * The picture of a way, whose words are its steps.
 *
 * @param {string} way
 */
export function homePicture(way) {
  const screens = pictures.get(way)?.() ?? [];
  const taken = screens.length * (wide + apart) - apart;
  const from = (320 - taken) / 2;
  return html`<figure class="picture sketch">
    <svg viewBox="-4 -4 328 ${high + 8}" role="img" aria-label=${t(`home.${way}.picture`)}>
      ${screens.map((drawn, n) => at(from + n * (wide + apart), 0, drawn))}
      ${screens.slice(1).map((_, n) => at(from + (n + 1) * (wide + apart) - apart / 2, high / 2, svg`<path class="sign" d="M-9 0h16M2 -5l5 5l-5 5" />`))}
    </svg>
  </figure>`;
}
