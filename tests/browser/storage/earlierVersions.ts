/**
 * Databases as each version of the program wrote them, with nothing of the program of today: stores
 * made and rows put by hand. A fixture once written is never changed; a new version adds one.
 */
export const DATABASE = 'tiltsweep';

type Write = (database: IDBDatabase, upgrade: IDBTransaction) => void;

export const EARLIER_VERSIONS: Readonly<Record<number, Write>> = {
  1(database, upgrade) {
    database.createObjectStore('stand');
    database.createObjectStore('wheels', { keyPath: 'id' });
    const entries = database.createObjectStore('entries', { keyPath: 'id' });
    entries.createIndex('byWheelAndTime', ['wheelId', 'at']);
    database.createObjectStore('traces');
    putRecords(upgrade);
  },
  2(database, upgrade) {
    EARLIER_VERSIONS[1]!(database, upgrade);
    database.createObjectStore('films', { keyPath: 'id' });
    database.createObjectStore('filmPieces');
    upgrade.objectStore('films').put(FILM);
    const pieces = upgrade.objectStore('filmPieces');
    pieces.put(new Blob([new Uint8Array([1, 2, 3])]), ['f1', 0]);
    pieces.put(new Blob([new Uint8Array([4, 5])]), ['f1', 1]);
  },
  3(database, upgrade) {
    EARLIER_VERSIONS[2]!(database, upgrade);
    database.createObjectStore('sweepNotes');
    database.createObjectStore('reserve');
    const films = upgrade.objectStore('films');
    // A sweep that broke off, of which no film was recorded.
    const notes = { pieceCount: 2, sizeBytes: 5, coveredDeg: 212.5 };
    films.put({ ...FILM, id: 'f2', mimeType: '', sizeBytes: 0, pieceCount: 0, notes });
    const pieces = upgrade.objectStore('sweepNotes');
    pieces.put(new Blob([new Uint8Array([9, 8])]), ['f2', 0]);
    pieces.put(new Blob([new Uint8Array([7, 6, 5])]), ['f2', 1]);
  },
};

/** Writes the database of a version; there must be none yet. */
export function writeEarlier(version: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, version);
    opening.addEventListener('upgradeneeded', () => {
      EARLIER_VERSIONS[version]!(opening.result, opening.transaction!);
    });
    opening.addEventListener('error', () => reject(opening.error));
    opening.addEventListener('success', () => {
      opening.result.close();
      resolve();
    });
  });
}

const sourced = (value: number, origin: string) => ({ value, origin });

const SETUP = {
  format: 'tiltsweep.setup/1',
  label: 'minibus front left',
  wheel: { massKg: 16.5, edgeRadiusMm: 309, weightRadiusMm: 185, boreDiameterMm: 54 },
  stand: { ballDiameterMm: 63.5, pendulumDepthMm: 8.2, lineAbovePlateMm: 50 },
  camera: { downTiltDeg: 32.5, horizontalFovDeg: 64 },
  sight: { valveMark: { widthMm: 22, colour: 'white' } },
  weightStepG: 5,
};

const WHEEL = {
  id: 'w1',
  label: 'minibus front left',
  place: 'front left',
  tyre: '205/65 R16',
  createdAt: '2026-03-01T08:00:00.000Z',
  changedAt: '2026-03-02T08:05:00.000Z',
  removedAt: null,
  massKg: sourced(16.5, 'measured'),
  edgeRadiusMm: sourced(309, 'entered'),
  boreDiameterMm: sourced(54, 'entered'),
  ballDiameterMm: sourced(63.5, 'entered'),
  pendulumDepthMm: sourced(8.2, 'assumed'),
  mark: { widthMm: 22, colour: 'white' },
  rings: [{ radiusMm: sourced(185, 'entered'), accepts: ['adhesive', 'clip-on'] }],
  forbiddenArcs: [{ fromDeg: 80, toDeg: 100 }],
  weightStepG: 5,
  stage: 'weights-on',
  lastReading: {
    entryId: 's1',
    at: '2026-03-02T08:00:00.000Z',
    amountG: 28.1,
    plusMinusG: 1.2,
    lightSpotDeg: 255,
  },
};

const STAND = {
  ballDiametersMm: [sourced(63.5, 'entered')],
  plateMaterial: 'mild-steel',
  screws: null,
  lineAbovePlateMm: sourced(50, 'measured'),
  camera: {
    downTiltDeg: sourced(32.5, 'measured'),
    horizontalFovDeg: null,
    deviceId: null,
  },
  stock: [],
};

const SWEEP = {
  id: 's1',
  wheelId: 'w1',
  at: '2026-03-02T08:00:00.000Z',
  kind: 'sweep',
  source: 'camera',
  setup: SETUP,
  assumed: ['stand.pendulumDepthMm'],
  filmId: null,
  reading: {
    format: 'tiltsweep.reading/1',
    status: 'ok',
    refusals: [],
    turn: { coveredDeg: 396.2, sense: 'clockwise', closureDeg: 0.4 },
    tilt: {
      edgeRiseMm: 11.85,
      highSpotDeg: 255,
      standMrad: 2.3,
      standHighAzimuthDeg: 230,
      covarianceMm2: [
        [0.036, 0],
        [0, 0.036],
      ],
    },
    unbalance: {
      amountGmm: 5198.5,
      heavySpotDeg: 75,
      lightSpotDeg: 255,
      covarianceGmm2: [
        [6931, 0],
        [0, 6931],
      ],
      ci95: { amountGmm: [5035.3, 5361.7], angleDeg: [73.2, 76.8] },
    },
    response: { mmPerGmm: 0.00228, source: 'model', standardError: 0.00004 },
    correction: [{ massG: 30, radiusMm: 185, angleDeg: 255 }],
    residualGmm: 351.5,
  },
  trace: {
    pointCount: 4,
    fit: { offsetMm: 1.8, cosMm: [3.1], sinMm: [-11.4] },
    rockingPeriodS: 4.2,
    contributionsG: { tape: 0.2 },
  },
};
/** Angles, heights, residuals. */
const POINTS = [0, 90, 180, 270, 4.9, -9.6, -1.3, 13.2, 0, 0.01, 0, -0.02];

const WEIGHTS = {
  id: 'p1',
  wheelId: 'w1',
  at: '2026-03-02T08:05:00.000Z',
  kind: 'weights',
  added: [{ massG: 30, radiusMm: 185, angleDeg: 255 }],
};

const FILM = {
  id: 'f1',
  at: '2026-03-02T08:09:00.000Z',
  wheelId: 'w1',
  setup: SETUP,
  assumed: [],
  mimeType: 'video/mp4',
  sizeBytes: 5,
  pieceCount: 2,
  entryId: null,
  removedAt: null,
};

function putRecords(upgrade: IDBTransaction): void {
  upgrade.objectStore('stand').put(STAND, 'stand');
  upgrade.objectStore('wheels').put(WHEEL);
  upgrade.objectStore('entries').put(SWEEP);
  upgrade.objectStore('entries').put(WEIGHTS);
  upgrade.objectStore('traces').put(Float32Array.from(POINTS), 's1');
}
