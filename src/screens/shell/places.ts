/**
 * The address of every screen, behind the `#`: the built folder works wherever it is served from,
 * and the browser's own way back works everywhere.
 */
export const places = {
  shed: '/',
  /** One wheel and the steps of its job. */
  wheel: (wheelId: string) => `/wheel/${wheelId}`,
  /** Measures of a wheel, and the ball under it. */
  bench: (wheelId: string) => `/wheel/${wheelId}/bench`,
  /** Camera on the wheel: is all to be seen? */
  sight: (wheelId: string) => `/wheel/${wheelId}/sight`,
  /** The sweep that runs, whatever its source. */
  sweep: '/sweep',
  reading: (wheelId: string, entryId: string) => `/wheel/${wheelId}/reading/${entryId}`,
  /** What to stick where, for one reading. */
  weights: (wheelId: string, entryId: string) => `/wheel/${wheelId}/weights/${entryId}`,
  /** Leads the hand to the places of a reading's weights. */
  lead: (wheelId: string, entryId: string) => `/wheel/${wheelId}/lead/${entryId}`,
  /** Before and after, and the verdict, for a check sweep. */
  proof: (wheelId: string, entryId: string) => `/wheel/${wheelId}/proof/${entryId}`,
  byEye: (wheelId: string) => `/wheel/${wheelId}/by-eye`,
  /** The stand itself: balls, plate, screws, laser, camera, stock of weights. */
  stand: '/stand',
  logbook: '/logbook',
  loggedWheel: (wheelId: string) => `/logbook/${wheelId}`,
  settings: '/settings',
  practice: '/practice',
  help: '/help',
  /** Values for a film that came without a setup file. */
  filmSetup: '/film-setup',
} as const;
