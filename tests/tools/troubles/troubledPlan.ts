import { seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import type { FilmFacts, Trouble, TroubledPlan, TroubleKind } from './trouble.ts';

/** Two kinds of light at once would be a third that no shed has. */
const NOT_TOGETHER: readonly (readonly [TroubleKind, TroubleKind])[] = [['dim', 'washed-out']];
/** Half of a smaller picture is smaller than any camera's that would be used. */
const HALVED_FROM_PX = 1000;
/** A line away for so long is to be refused, s: the program takes 10 on trust, and fades take a moment. */
const LONG_DARK_S = [11.5, 14] as const;
/** A hand before the laser's window: well within what is taken on trust, s. */
const SHORT_DARK_S = [1.5, 4] as const;

interface Lot {
  between(low: number, high: number): number;
  sign(): number;
  isHeads(): boolean;
}

/**
 * How each kind is drawn. The ranges are from what a person would still film with: no darker than a
 * lamp in the next room, no blur that hides the line, no roll that an eye would not see and mend.
 */
const DRAWN: { readonly [K in TroubleKind]: (lot: Lot) => Trouble } = {
  dim: (lot) => ({ kind: 'dim', gain: lot.between(0.35, 0.65) }),
  'washed-out': (lot) => ({
    ...{ kind: 'washed-out', gain: lot.between(0.55, 0.8), liftSteps: lot.between(25, 70) },
  }),
  noise: (lot) => ({
    ...{ kind: 'noise', strength: lot.between(6, 18), seed: Math.floor(lot.between(0, 1e6)) },
  }),
  roll: (lot) => ({ kind: 'roll', rollDeg: lot.sign() * lot.between(2, 8) }),
  lens: (lot) => ({ kind: 'lens', radial: lot.between(-0.03, 0.07) }),
  sway: (lot) => swung('sway', lot, lot.between(0.4, 2), lot.between(0.9, 2.5)),
  shake: (lot) => swung('shake', lot, lot.between(0.3, 1), lot.between(0.12, 0.3)),
  dropped: (lot) => ({
    ...{ kind: 'dropped', share: lot.between(0.1, 0.4), lot: Math.floor(lot.between(0, 997)) },
  }),
  mirrored: () => ({ kind: 'mirrored' }),
  hand: (lot) => ({
    kind: 'hand',
    colour: lot.isHeads() ? 'skin' : 'dark',
    atShare: lot.between(0.25, 0.75),
    crossingS: lot.between(1.5, 4),
    toRight: lot.isHeads(),
    widthShare: lot.between(0.12, 0.25),
    heightShare: lot.between(0.5, 0.75),
  }),
  drift: (lot) => ({
    kind: 'drift',
    what: (['exposure', 'brightness', 'colour'] as const)[Math.floor(lot.between(0, 3))],
    amount: lot.between(0.04, 0.15),
    periodS: lot.between(6, 30),
  }),
  blur: (lot) => ({ kind: 'blur', sigmaPx: lot.between(0.6, 1.8) }),
  coarse: (lot) => ({ kind: 'coarse', rateFactor: Math.round(lot.between(30, 37)) }),
  'half-size': () => ({ kind: 'half-size' }),
  'back-and-forth': (lot) => ({
    ...{ kind: 'back-and-forth', atShare: lot.between(0.3, 0.8), backS: lot.between(2, 6) },
  }),
  'no-field-of-view': () => ({ kind: 'no-field-of-view' }),
  'no-tap': () => ({ kind: 'no-tap' }),
  'laser-off': (lot) => ({
    kind: 'laser-off',
    atShare: lot.between(0.2, 0.4),
    lastsS: lot.isHeads() ? lot.between(...LONG_DARK_S) : lot.between(...SHORT_DARK_S),
  }),
};

/** A film and two to four troubles for it, the same for the same seed and films. */
export function troubledPlan(seed: number, films: readonly FilmFacts[]): TroubledPlan {
  if (films.length === 0) throw new Error('no film to put troubles on');
  const random = seededRandom(Math.imul(seed, 7919) + 17);
  const lot: Lot = {
    between: (low, high) => low + (high - low) * random(),
    sign: () => (random() < 0.5 ? -1 : 1),
    isHeads: () => random() < 0.5,
  };
  // Numbers drawn in a row from neighbouring seeds are alike at first.
  for (let i = 0; i < 8; i++) random();
  const film = films[Math.floor(films.length * random())];
  const count = 2 + Math.floor(3 * random());
  const kinds: TroubleKind[] = [];
  const left = (Object.keys(DRAWN) as TroubleKind[]).filter((kind) => fits(kind, film));
  while (kinds.length < count) {
    const [kind] = left.splice(Math.floor(left.length * random()), 1);
    if (!NOT_TOGETHER.some((pair) => pair.includes(kind) && kinds.some((k) => pair.includes(k))))
      kinds.push(kind);
  }
  return { seed, film, troubles: kinds.map((kind) => DRAWN[kind](lot)) };
}

function fits(kind: TroubleKind, film: FilmFacts): boolean {
  return kind !== 'half-size' || film.widthPx >= HALVED_FROM_PX;
}

function swung(kind: 'sway' | 'shake', lot: Lot, downPx: number, periodS: number): Trouble {
  return { kind, downPx, acrossPx: downPx * lot.between(0, 1.2), periodS };
}

/** `dim gain 0.52, hand skin …`: one line for the table. */
export function toldTroubles({ troubles }: Pick<TroubledPlan, 'troubles'>): string {
  const told = (value: unknown) =>
    typeof value === 'number' ? String(Math.round(value * 1000) / 1000) : String(value);
  return troubles
    .map(({ kind, ...figures }) => {
      const parts = Object.entries(figures).filter(([name]) => name !== 'seed' && name !== 'lot');
      return [kind, ...parts.map(([name, value]) => `${name} ${told(value)}`)].join(' ');
    })
    .join('; ');
}
