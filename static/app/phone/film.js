// A film of one point, drawn by the page itself, for browsers that can't be asked
// to keep the screen on: many leave it on while a film plays. A habit of
// browsers, not a promise: common practice, no source.

/** @type {HTMLVideoElement | undefined} */
let film;
/** @type {ReturnType<typeof setInterval> | undefined} */
let drawing;

/** Plays the film; resolves to whether it runs. */
export async function playFilm() {
  if (film) return resume(film);
  const canvas = document.createElement('canvas');
  const point = canvas.getContext('2d');
  if (!canvas.captureStream || !point) return false;
  canvas.width = canvas.height = 2;
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
  return resume(film);
}

/** @param {HTMLVideoElement} film */
async function resume(film) {
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
  const stream = /** @type {MediaStream | undefined} */ (film?.srcObject);
  stream?.getTracks().forEach((track) => track.stop());
  film?.remove();
  film = undefined;
}
