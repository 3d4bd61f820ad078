/**
 * One trouble of a film, as numbers alone. Lengths in picture pixels are for a picture 1280 wide and
 * follow its width; shares are of the film's time, the picture's width or its height; t is time after
 * what was played backward.
 */
export type Trouble =
  /** Room light times `gain` (code values), the line as bright as before: its core stays white. */
  | { readonly kind: 'dim'; readonly gain: number }
  /** Daylight on everything: code values times `gain`, then lifted by `liftSteps` of 255. */
  | { readonly kind: 'washed-out'; readonly gain: number; readonly liftSteps: number }
  | { readonly kind: 'noise'; readonly strength: number; readonly seed: number }
  /** The picture's content turned clockwise about the middle; what comes in at the sides is smeared. */
  | { readonly kind: 'roll'; readonly rollDeg: number }
  /** Seen radius ρ (1 at the corner) shows what a straight lens shows at ρ·(1 + radial·ρ²): positive is a barrel. */
  | { readonly kind: 'lens'; readonly radial: number }
  | {
      readonly kind: 'sway' | 'shake';
      readonly acrossPx: number;
      readonly downPx: number;
      readonly periodS: number;
    }
  | { readonly kind: 'dropped'; readonly share: number; readonly lot: number }
  | { readonly kind: 'mirrored' }
  | {
      readonly kind: 'hand';
      readonly colour: 'skin' | 'dark';
      readonly atShare: number;
      readonly crossingS: number;
      readonly toRight: boolean;
      readonly widthShare: number;
      readonly heightShare: number;
    }
  | {
      readonly kind: 'drift';
      readonly what: 'exposure' | 'brightness' | 'colour';
      readonly amount: number;
      readonly periodS: number;
    }
  | { readonly kind: 'blur'; readonly sigmaPx: number }
  /** Coded with this constant rate factor of x264. */
  | { readonly kind: 'coarse'; readonly rateFactor: number }
  | { readonly kind: 'half-size' }
  /** Played to a time, back by so long, and on again: the wheel turned back and forth. */
  | { readonly kind: 'back-and-forth'; readonly atShare: number; readonly backS: number }
  | { readonly kind: 'no-field-of-view' }
  | { readonly kind: 'no-tap' }
  | { readonly kind: 'laser-off'; readonly atShare: number; readonly lastsS: number };

export type TroubleKind = Trouble['kind'];
export type TroubleOf<K extends TroubleKind> = Trouble & { readonly kind: K };

/** What has to be known of a film before troubles are drawn for it. */
export interface FilmFacts {
  readonly name: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly durationS: number;
  readonly picturesPerS: number;
  readonly laserColour: 'green' | 'red';
}

export interface TroubledPlan {
  readonly seed: number;
  readonly film: FilmFacts;
  readonly troubles: readonly Trouble[];
}

/** The trouble of that kind, if the plan has one. */
export function troubleOf<K extends TroubleKind>(
  { troubles }: Pick<TroubledPlan, 'troubles'>,
  kind: K,
): TroubleOf<K> | undefined {
  return troubles.find((t): t is TroubleOf<K> => t.kind === kind);
}
