// A film of one point, drawn by the page itself, for browsers that can't be asked
// to keep the screen on: many leave it on while a film plays. A habit of
// browsers, not a promise: common practice, no source.

let film;
let drawing;

/** Plays the film; resolves to whether it runs. */
export async function playFilm() {
  if (film) return resume();
  const canvas = document.createElement('canvas');
  if (!canvas.captureStream) return false;
  canvas.width = canvas.height = 2;
  const point = canvas.getContext('2d');
  let light = false;
  const draw = () => {
    light = !light;
    point.fillStyle = light ? 'black' : 'white';
    point.fillRect(0, 0, 2, 2);
  };
  draw();
  film = document.createElement('video');
  Object.assign(film, { className: 'film', muted: true, loop: true, playsInline: true });
  film.ariaHidden = 'true';
  film.srcObject = canvas.captureStream(1);
  document.body.append(film);
  drawing = setInterval(draw, 1000);
  return resume();
}

async function resume() {
  const playing = await film.play().then(
    () => true,
    () => false,
  );
  if (!playing) stopFilm();
  return playing;
}

/** Ends the film. */
export function stopFilm() {
  clearInterval(drawing);
  film?.srcObject.getTracks().forEach((track) => track.stop());
  film?.remove();
  film = undefined;
}
