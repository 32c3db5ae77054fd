// The gallery of stories: filtered by screen, size and look, side by side.
const looks = { light: 'light', dark: 'dark', large: 'text of 200 %', forced: 'forced colours' };
// Of a live story the page can set the theme and the size of its text, and no more.
const asked = { light: '', dark: '&theme=dark', large: '&text=2' };
const form = document.querySelector('form');
const main = document.querySelector('main');
const { text, screen, size, whole } = form.elements;

const make = (tag, properties = {}, ...children) => {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
};

for (const name of ['phone', 'desk']) size.append(make('option', { value: name }, name));
screen.append(make('option', { value: '' }, 'all'));
for (const [look, label] of Object.entries(looks)) {
  const box = make('input', { type: 'checkbox', name: 'look', value: look, checked: true });
  form.querySelector('fieldset').append(make('label', {}, box, ` ${label}`));
}

let made = { stories: [], left: 0 };

/** Reads what is made so far, until all of it is. */
async function read() {
  const count = made.stories.length;
  made = await (await fetch('made/stories.json')).json();
  if (made.stories.length !== count) draw();
  if (made.left) setTimeout(read, 2000);
}

function draw() {
  const screens = [...new Set(made.stories.map((story) => story.screen))];
  for (const name of screens)
    if (![...screen.options].some(({ value }) => value === name))
      screen.append(make('option', { value: name }, name));
  const wanted = text.value.toLowerCase();
  const shown = made.stories.filter(
    (story) =>
      (!screen.value || story.screen === screen.value) &&
      [story.name, story.heading, story.phone].join(' ').toLowerCase().includes(wanted),
  );
  const rest = made.left ? `, ${made.left} still to come` : '';
  document.querySelector('#count').textContent = `${shown.length} shown${rest}`;
  main.replaceChildren(...shown.map(article));
}

function article({ id, name, phone, heading, live, pictures }) {
  const chosen = [...form.elements.look].filter(({ checked }) => checked);
  return make(
    'article',
    {},
    make('h2', {}, name),
    make('p', {}, `“${heading}”, on the phone “${phone}”. ${standing(live)}`),
    make(
      'div',
      { className: 'pictures', tabIndex: 0 },
      ...chosen.map(({ value }) => figure(id, value, pictures)),
    ),
  );
}

const standing = (live) =>
  live
    ? 'Live, it comes to the same.'
    : 'Live, it comes to another state: the picture counts. Something in it is neither in the store nor tapped.';

function figure(id, look, pictures) {
  const first = `${look}-${size.value}.png`;
  const at = (file) => `made/${id}/${file}`;
  const picture = make('img', {
    src: at(whole.checked ? pictures[first] : first),
    alt: `${id}, ${looks[look]}`,
    loading: 'lazy',
  });
  const links = [make('a', { href: at(pictures[first]), target: '_blank' }, looks[look])];
  if (look in asked)
    links.push(
      ' ',
      make('a', { href: `open.html?story=${id}${asked[look]}`, target: 'live' }, 'live'),
    );
  const shown = make('figure', {}, make('figcaption', {}, ...links), picture);
  shown.dataset.size = size.value;
  return shown;
}

form.addEventListener('input', draw);
form.addEventListener('submit', (event) => event.preventDefault());
await read();
