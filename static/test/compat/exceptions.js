// What the page uses though not every promised browser has it: for each feature of the
// data (`x.*` is x and all below it) why nothing depends on it, and the test in which it
// is absent. One that is no longer needed fails the check, and so does one without its
// test. With `before` no test is asked for: an older value of the same property stands
// before each use; what is `inPart` every browser has, but not all of it.

// In these a browser lacks all at once that stands here of scripts, and of styles.
const noScripts =
  'browser/oldest:a job and its backup, where a browser has none of what is newer in scripts';
const noStyles =
  'browser/oldest:every screen is whole and can be read without what is newer in styles';
const noHead = 'browser/oldest:a job and its backup'; // nor what the page's head and headers ask for

export const exceptions = [
  // Syntax.
  {
    keys: ['javascript.operators.await.top_level'],
    why: 'What WebKit gets wrong until 27 are several modules that wait for one that waits itself; here nothing imports it.',
    test: 'compat/built:nothing imports a module that waits',
  },
  {
    keys: ['javascript.classes.public_class_fields'],
    why: 'What WebKit gets wrong until 16 are values that stand in brackets; none does.',
    test: 'compat/built:no value of a class field stands in brackets',
  },

  // What browsers do.
  {
    keys: ['api.CompressionStream', 'api.DecompressionStream'],
    why: 'A backup is a plain text where nothing compresses; one that is compressed is refused in a sentence.',
    test: noScripts,
  },
  {
    keys: [
      'api.CompressionStream.CompressionStream.deflate-raw',
      'api.DecompressionStream.DecompressionStream.deflate-raw',
    ],
    why: 'It is tried out before pictures of cards are offered; else a sentence stands in their place.',
    test: noScripts,
  },
  {
    keys: ['api.BarcodeDetector', 'api.BarcodeDetector.getSupportedFormats_static'],
    why: "A picture of a card is read by the phone's own camera, and pasted.",
    test: noScripts,
  },
  {
    keys: [
      'api.Notification.*',
      'api.ServiceWorkerRegistration.showNotification',
      'api.ServiceWorkerGlobalScope.notificationclick_event',
    ],
    why: 'What is due is said in the page; it is asked about only where the phone can show it.',
    test: noScripts,
  },
  {
    keys: ['api.Navigator.share.*', 'api.Navigator.canShare.*'],
    why: 'A file that cannot be shared is saved.',
    test: noScripts,
  },
  {
    keys: ['api.Navigator.wakeLock', 'api.WakeLock.request'],
    why: 'A film of one point keeps the screen on, or it is said that nothing does.',
    test: 'browser/voice:without a wake lock a film of one point keeps the screen on until the job is left',
  },
  {
    keys: ['api.HTMLMediaElement.captureStream'],
    why: 'It is a canvas that is filmed; and without the film either it is said that the screen may go dark.',
    test: 'browser/voice:a phone without any of this has the same job, and no button that does nothing',
  },
  {
    keys: [
      'api.Navigator.vibrate',
      'api.Navigator.userActivation',
      'api.UserActivation.hasBeenActive',
    ],
    why: 'A timer rings and says so on the screen too.',
    test: noScripts,
  },
  {
    keys: ['api.SpeechRecognition.*'],
    why: 'Listening is offered only where the phone does it by itself.',
    test: 'browser/voice:a phone without any of this has the same job, and no button that does nothing',
  },
  {
    keys: ['api.Window.beforeinstallprompt_event', 'api.Window.appinstalled_event'],
    why: 'Where no browser offers to install it, the way to its home screen is told in words.',
    test: 'browser/storage:in a browser of an iPhone: seven days, its own way first, the others behind a fold',
  },
  {
    keys: ['api.StorageManager.estimate'],
    why: 'It is said that the browser does not tell how much space is left.',
    test: noScripts,
  },
  {
    keys: ['api.scheduler', 'api.Scheduler.yield'],
    why: 'The screen gets its turn by a timer.',
    test: noScripts,
  },
  {
    keys: ['api.trustedTypes'],
    why: 'A browser that asks for no policy takes plain texts.',
    test: noScripts,
  },
  {
    keys: ['api.createImageBitmap.options_imageOrientation_parameter.from-image'],
    why: 'Where it is refused the picture is read without, which is the same there.',
    test: noScripts,
  },
  {
    keys: ['api.HTMLElement.focus.options_preventScroll_parameter', 'api.SVGElement.focus.*'],
    why: 'The screen begins at its heading, or at what gets the focus, if it scrolls there.',
    test: noScripts,
  },
  {
    keys: [
      'api.HTMLCanvasElement.getContext.2d_context.options_alpha_parameter',
      'api.CanvasRenderingContext2D.imageSmoothingQuality',
    ],
    why: 'A picture is painted whole in any case; it may be a little coarser.',
    test: noScripts,
  },
  {
    keys: ['api.HTMLMediaElement.srcObject'],
    inPart: true,
    why: 'In part there means: of other things than a camera and a canvas, which are all that is shown.',
    test: 'browser/qr:a camera films the codes of a card of one’s own, and it is taken in',
  },
  {
    keys: ['api.Window.devicePixelRatio'],
    inPart: true,
    why: 'In part there means that it stays the same when a page is zoomed; it is asked for once, by the ruler, which is matched to a card.',
    test: 'browser/looks:the gauge is matched to a card by keyboard, and then true to scale',
  },

  // Styles.
  {
    keys: ['css.properties.paint-order'],
    inPart: true,
    why: 'In part there means: of text outside drawings. It keeps the words of a drawing clear of its lines.',
    test: 'browser/due:the picture says in words what it shows, and calls an estimate one',
  },
  {
    keys: [
      'css.selectors.has',
      'css.selectors.marker',
      'css.properties.accent-color',
      'css.properties.forced-color-adjust.*',
      'css.properties.outline',
      'css.properties.scrollbar-width.*',
      'css.properties.text-decoration.dotted',
      'css.properties.user-select',
      'css.at-rules.media.forced-colors',
    ],
    why: 'Ornament, and room round what gets the focus; the tick itself says what is chosen, the words what is meant.',
    test: noStyles,
  },
  {
    keys: [
      'css.properties.cursor.default',
      'css.properties.cursor.ns-resize',
      'css.properties.cursor.pointer',
    ],
    why: 'A finger has no cursor.',
    test: noStyles,
  },
  {
    keys: ['css.properties.font-family.ui-sans-serif'],
    why: 'The next font of the list is taken.',
    test: noStyles,
  },
  {
    keys: ['css.at-rules.page', 'css.at-rules.page.size', 'css.properties.break-after.avoid'],
    why: 'Paper has the margins and the size that the browser gives it, with a label in its corner, and may break below a heading.',
    test: noStyles,
  },

  // The page and its manifest.
  {
    keys: [
      'html.elements.input.capture',
      'html.elements.video.playsinline',
      'html.elements.meta.name.theme-color',
      'html.elements.meta.name.viewport',
      'html.elements.link.rel.manifest',
      'html.elements.link.rel.modulepreload',
    ],
    why: 'Hints: a phone has them or an older one beside them, a desk needs none, and what is loaded early comes a little later.',
    test: noHead,
  },
  {
    keys: ['html.elements.link.rel.icon'],
    why: 'iOS takes its own kind of icon, which stands below it.',
    test: 'compat/built:each kind of icon is there',
  },
  {
    keys: ['manifests.webapp.*'],
    why: 'Who cannot install the app has it as a page.',
    test: noHead,
  },

  // Headers.
  {
    keys: ['http.headers.Content-Security-Policy.script-src.wasm-unsafe-eval'],
    why: 'Where no program may run, the server computes.',
    test: 'browser/fallback:where a browser ${what}, the server computes', // eslint-disable-line no-template-curly-in-string
  },
  {
    keys: [
      'http.headers.Content-Security-Policy.require-trusted-types-for',
      'http.headers.Content-Security-Policy.trusted-types',
      'http.headers.Permissions-Policy.*',
    ],
    why: 'They give up what the page does not use; who does not know them runs the same page.',
    test: noHead,
  },
  {
    keys: ['http.headers.Content-Security-Policy.worker-src'],
    why: 'Before it, the sources of scripts hold for workers, which are the same.',
    test: 'compat/built:workers come from where scripts come from',
  },
  {
    keys: ['http.headers.Cache-Control.immutable'],
    why: 'What never changes is asked about once more than needed.',
    test: noHead,
  },
];

/** What of scripts a browser may lack altogether, as ways through the data. */
export const absent = exceptions
  .filter(({ inPart }) => !inPart)
  .flatMap(({ keys }) => keys.map((key) => key.replace(/\.\*$/, '').split('.')))
  .filter(([tree]) => tree === 'api');

/** What the data doesn't know; what it is. */
export const known = {
  'meta name: description': 'for those who search; no browser reads it',
  'meta name: version': "the page's own",
  'meta name: built': "the page's own",
  'attribute: meta media': 'of the colour of the browser round the page; else the first is taken',
  'link rel: stylesheet': 'as old as style sheets',
  'link rel: apple-touch-icon': 'the icon on the home screen of iOS',
  'manifest: categories': 'for shops of apps',
  'manifest: dir': 'how its texts are read',
  'manifest: lang': 'in which language they are',
  'manifest: screenshots': 'what an installer may show',
  'property: -webkit-text-size-adjust':
    'the name on iOS of text-size-adjust, which others need not',
  'property: -webkit-user-select': 'the name on iOS of user-select, which stands beside it',
  'selector: -webkit-details-marker': 'the arrow of a summary before ::marker; a rule by itself',
  'attribute: svg xmlns': 'what a file of SVG begins with',
  'header: X-Permitted-Cross-Domain-Policies': 'for programs that are no browsers',
  'event: rescue': "the page's own",
  'global: webkitSpeechRecognition': 'the name of SpeechRecognition in Chrome, asked for with it',
  'global: fs': "what the compiler's glue makes, with the core's program",
  'global: Go': "what the compiler's glue makes, with the core's program",
};
