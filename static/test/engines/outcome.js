// What a line of the walk comes to, beside that it works.

/** The capability is not there, and `seen` stands on the screen instead, or happens. */
export const fallsBack = (seen) => ({ outcome: 'falls back', seen });

/** The capability is missing, and `seen` says so. */
export const missing = (seen) => ({ outcome: 'missing', seen });
