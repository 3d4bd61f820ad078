import { troubleOf, type Trouble, type TroubledPlan, type TroubleOf } from './trouble.ts';

type Swing = TroubleOf<'sway' | 'shake'>;

/** Films are counted against a picture so wide where a trouble is told in pixels. */
const TOLD_WIDTH_PX = 1280;
/** Border that a bent lens may look into, share of the width; 7 % at the corners is the most drawn. */
const LENS_BORDER_SHARE = 0.07;
/** Above this a sample is lamp or line and not room, of 255: it stays as bright in a dim shed. */
const LINE_FROM = 170;
/** A second sine, so that no sway is pure; any ratio that is no fraction of small numbers. */
const SECOND_SINE = 1.63;

/**
 * The troubles as a graph of ffmpeg's filters from film `[0:v]`, and the picture of a hand `[1:v]`
 * where there is one, to `[out]`. In the order in which light meets them: what is played, laser,
 * lens, arm, hand, light, size, noise; pictures are dropped last.
 */
export function filmGraph(plan: TroubledPlan): string {
  const steps = [played(plan), laserOff(plan)];
  const { widthPx } = plan.film;
  const seen = [
    troubleOf(plan, 'mirrored') ? 'hflip' : '',
    lens(plan),
    moved(plan),
    hand(plan),
    ...plan.troubles.map((trouble) => light(trouble, widthPx)),
    troubleOf(plan, 'half-size') ? 'scale=iw/2:ih/2:flags=area' : '',
    noise(plan),
    dropped(plan),
    'format=yuv420p',
  ].filter((step) => step !== '');
  return `[0:v]${[...steps, ''].join('')}${seen.join(',')}[out]`;
}

function played(plan: TroubledPlan): string {
  const back = troubleOf(plan, 'back-and-forth');
  if (!back) return '';
  const turnS = back.atShare * plan.film.durationS;
  const backTo = Math.max(0.5, turnS - back.backS).toFixed(3);
  const to = turnS.toFixed(3);
  return (
    'split=3[p0][p1][p2];' +
    `[p0]trim=0:${to},setpts=PTS-STARTPTS[q0];` +
    `[p1]trim=${backTo}:${to},reverse,setpts=PTS-STARTPTS[q1];` +
    `[p2]trim=start=${backTo},setpts=PTS-STARTPTS[q2];` +
    '[q0][q1][q2]concat=n=3:v=1,'
  );
}

/**
 * Luma that comes with one step of V: pure green has 0.587 of luma and −0.419 of V, red 0.299 and 0.5
 * (BT.601).
 */
const LASER_LUMA = { green: 1.4, red: 0.6 } as const;

/**
 * For a time the laser's light is taken away where the picture has its colour, or had it before: the
 * line stands still, and where it is weak its colour does not tell it from the tread. What it burnt out
 * is lost: there stands the median of what lies round about, which turns with the wheel as the tread
 * does.
 */
function laserOff(plan: TroubledPlan): string {
  const off = troubleOf(plan, 'laser-off');
  if (!off) return '';
  const from = (off.atShare * plan.film.durationS).toFixed(3);
  const to = (off.atShare * plan.film.durationS + off.lastsS).toFixed(3);
  const { laserColour } = plan.film;
  const isLaser = laserColour === 'green' ? 'lt(val,120)' : 'gt(val,155)';
  const away = laserColour === 'green' ? '128-val' : 'val-128';
  const light = `lut='clip(${LASER_LUMA[laserColour]}*(${away}),0,255)'`;
  const wide = 'dilation,'.repeat(8);
  return (
    'split=4[on0][work][seen][on1];' +
    `[on0]trim=0:${from},setpts=PTS-STARTPTS[l0];` +
    `[work]trim=${from}:${to},setpts=PTS-STARTPTS,format=yuv444p,split=3[w0][w1][w2];` +
    `[w1]extractplanes=y[y1];[w2]extractplanes=v,${light}[y2];` +
    '[y1][y2]blend=c0_mode=subtract,median=radius=5:radiusV=14,format=yuv444p[without];' +
    `[seen]trim=0:${to},format=yuv444p,extractplanes=v,lut='if(${isLaser},255,0)',lagfun=decay=1,` +
    `trim=start=${from},setpts=PTS-STARTPTS,${wide}format=gray,` +
    'split=3[m0][m1][m2];[m0][m1][m2]mergeplanes=0x001020:yuv444p[mask];' +
    '[w0][without][mask]maskedmerge,format=yuv420p[l1];' +
    `[on1]trim=start=${to},setpts=PTS-STARTPTS[l2];` +
    '[l0][l1][l2]concat=n=3:v=1,'
  );
}

function lens(plan: TroubledPlan): string {
  const bend = troubleOf(plan, 'lens');
  if (!bend) return '';
  const { widthPx, heightPx } = plan.film;
  const border = 16 * Math.ceil((LENS_BORDER_SHARE * widthPx) / 16);
  const [wide, high] = [widthPx + 2 * border, heightPx + 2 * border];
  // ffmpeg counts radii in half diagonals of the picture it is given.
  const k1 = (bend.radial * (wide ** 2 + high ** 2)) / (widthPx ** 2 + heightPx ** 2);
  const sides = ['left', 'right', 'top', 'bottom'].map((side) => `${side}=${border}`).join(':');
  return (
    `pad=${wide}:${high}:${border}:${border},fillborders=${sides}:mode=smear,` +
    `lenscorrection=k1=${k1.toFixed(5)}:i=bilinear,crop=${widthPx}:${heightPx}:${border}:${border}`
  );
}

/** Roll, sway and shake in one resampling: each corner of the picture looks at its place in the film. */
function moved(plan: TroubledPlan): string {
  const { widthPx, heightPx } = plan.film;
  const roll = troubleOf(plan, 'roll');
  const swings = [troubleOf(plan, 'sway'), troubleOf(plan, 'shake')].filter(
    (s): s is Swing => s !== undefined,
  );
  if (!roll && swings.length === 0) return '';
  const a = ((roll?.rollDeg ?? 0) * Math.PI) / 180;
  const corner = (i: number) => {
    const x = ((i & 1) - 0.5) * widthPx;
    const y = ((i >> 1) - 0.5) * heightPx;
    const xSource = Math.cos(a) * x + Math.sin(a) * y + widthPx / 2;
    const ySource = -Math.sin(a) * x + Math.cos(a) * y + heightPx / 2;
    const across = swings.map((s) => swing(plan, s, s.acrossPx, 1)).join('');
    const down = swings.map((s) => swing(plan, s, s.downPx, 0)).join('');
    return `x${i}='${xSource.toFixed(3)}${across}':y${i}='${ySource.toFixed(3)}${down}'`;
  };
  const corners = [0, 1, 2, 3].map(corner).join(':');
  return `perspective=${corners}:interpolation=cubic:eval=${swings.length > 0 ? 'frame' : 'init'}`;
}

function swing(
  plan: TroubledPlan,
  { periodS }: { readonly periodS: number },
  amplitudePx: number,
  phase: number,
): string {
  const { widthPx, picturesPerS } = plan.film;
  const scaled = ((amplitudePx * widthPx) / TOLD_WIDTH_PX).toFixed(4);
  const step = (2 * Math.PI) / (periodS * picturesPerS);
  const sine = (k: number) => `sin(${(k * step).toFixed(6)}*on+${(phase * k).toFixed(3)})`;
  return `+${scaled}*(0.7*${sine(1)}+0.5*${sine(SECOND_SINE)})`;
}

function hand(plan: TroubledPlan): string {
  const it = troubleOf(plan, 'hand');
  if (!it) return '';
  const fromS = it.atShare * plan.film.durationS;
  const gone = `(t-${fromS.toFixed(3)})/${it.crossingS.toFixed(3)}`;
  const way = it.toRight ? gone : `(1-${gone})`;
  const enable = `enable='between(t,${fromS.toFixed(3)},${(fromS + it.crossingS).toFixed(3)})'`;
  // The overlay ends this chain and starts the next: it has two inputs.
  return `null[bare];[bare][1:v]overlay=x='-w+(W+w)*${way}':y=H-h:${enable}`;
}

function light(trouble: Trouble, widthPx: number): string {
  switch (trouble.kind) {
    case 'blur':
      return `gblur=sigma=${((trouble.sigmaPx * widthPx) / TOLD_WIDTH_PX).toFixed(3)}`;
    case 'dim': {
      const knee = LINE_FROM * trouble.gain;
      const rise = (255 - knee) / (255 - LINE_FROM);
      const curve = `'if(lte(val,${LINE_FROM}),val*${trouble.gain.toFixed(4)},${knee.toFixed(3)}+(val-${LINE_FROM})*${rise.toFixed(4)})'`;
      return `format=gbrp,lutrgb=r=${curve}:g=${curve}:b=${curve},format=yuv420p`;
    }
    case 'washed-out': {
      const curve = `'clip(val*${trouble.gain.toFixed(4)}+${trouble.liftSteps.toFixed(2)},0,255)'`;
      return `format=gbrp,lutrgb=r=${curve}:g=${curve}:b=${curve},format=yuv420p`;
    }
    case 'drift': {
      const wave = `${trouble.amount.toFixed(4)}*sin(${((2 * Math.PI) / trouble.periodS).toFixed(5)}*t)`;
      if (trouble.what === 'exposure') return `eq=gamma='1+2*${wave}':eval=frame`;
      if (trouble.what === 'brightness') return `eq=brightness='0.6*${wave}':eval=frame`;
      return `eq=gamma_r='1+${wave}':gamma_b='1-${wave}':eval=frame`;
    }
    default:
      return '';
  }
}

function noise(plan: TroubledPlan): string {
  const it = troubleOf(plan, 'noise');
  return it ? `noise=alls=${it.strength.toFixed(0)}:allf=t:all_seed=${it.seed}` : '';
}

/** By a hash of the picture's number: as good as a lot, and the same each time; the first ones stay. */
function dropped(plan: TroubledPlan): string {
  const it = troubleOf(plan, 'dropped');
  if (!it) return '';
  const lot = `mod(n*n*${1 + (it.lot % 89)}+n*461+${it.lot},997)`;
  return `select='lt(n,2)+gte(${lot},${(997 * it.share).toFixed(0)})'`;
}
