// What a person tells in a job from its first step to its last, and of a bike: all that a
// step asks, a note at each, some of it taken back. Times and ids follow from the version.

const readings = {
  odometer: '12 400 km',
  temperature: '55 °C',
  drained: '2.1 l',
  torque: '29 Nm',
  poured: '1 l',
  leak: 'dry',
  level: 'middle',
};

/** What is told to a program of that version: {job(card, steps, part), facts(bike, card)}. */
export function tellAll(version, begun = new Date()) {
  const day = begun.toISOString().slice(0, 10);
  let clock = begun.getTime();
  let ids = 0;
  const now = () => new Date((clock += 1300)).toISOString();
  const id = () => `${version.replaceAll('.', '-')}-${String(++ids).padStart(4, '0')}`;

  /** A job of that card's steps, told as far as that part of them; a whole one is finished. */
  function job(card, steps, part) {
    const record = {
      ...{ id: id(), name: `${card.make} ${card.model}`, started: now(), card },
      ...{ bench: { system: 'metric', place: 'garage' }, steps: steps.map((step) => step.id) },
    };
    const events = [];
    const photos = [];
    const tell = (kind, more = {}) => {
      events.push({ id: id(), time: now(), seq: events.length + 1, day, kind, ...more });
      return events.at(-1).id;
    };
    for (const [at, step] of steps.slice(0, Math.ceil(steps.length * part)).entries()) {
      const here = { step: step.id };
      if (at === 3) {
        const signs = { out: 'out' };
        tell('problem', { ...here, what: 'fell-in', value: 'carry-on', signs });
      }
      for (const { what, of, choice } of step.asks ?? []) {
        const value = choice && !choice.includes(readings[what]) ? choice[0] : readings[what];
        tell('reading', { ...here, what, ...(of && { of }), value });
      }
      for (const { what, seconds } of step.timers ?? [])
        tell('timer', { ...here, what, until: new Date(clock + 1000 * seconds).toISOString() });
      if (step.look) {
        const signs = { found: 'fuzz', ...(step.look.includes('oil') && { oil: 'fuel' }) };
        tell('look', { ...here, signs });
        const { photo: what } = step;
        photos.push({ job: record.id, id: tell('photo', { ...here, what }), what });
      }
      tell('note', { ...here, text: `A note at ${step.id}.` });
      const done = tell('done', here);
      if (at === 5) {
        tell('undo', { of: done });
        tell('done', here);
        tell('undo', { of: tell('note', { ...here, text: 'A note that was taken back.' }) });
      }
    }
    if (part === 1) tell('finish');
    return { job: record, events, photos };
  }

  /** A bike that follows a card, with a name, a plate and a figure of its own. */
  const facts = (bike, card) =>
    [
      { kind: 'follows', value: card },
      { kind: 'told', what: 'called', value: 'the green one' },
      { kind: 'told', what: 'plate', value: 'KX 12' },
      {
        ...{ kind: 'figure', what: 'grade.engine', value: '10W-50' },
        ...{ standing: 'decided', text: 'the owner wants it' },
      },
    ].map((fact, at) => ({
      ...{ book: 'bike', of: bike, id: id(), time: now(), day, seq: at + 1 },
      ...fact,
    }));

  return { job, facts };
}
