import type { FilmShelf } from '../contract/filmShelf.ts';
import { noticeFor, type Notice } from '../contract/notice.ts';
import type {
  LiveSourceKind,
  OwnFeed,
  ShowPicture,
  SightChange,
  SweepErrand,
} from '../contract/session.ts';
import type { AcceptedReading } from '../contract/reading.ts';
import { ASKED_SENSE, type SweepSetup } from '../contract/setup.ts';
import type { KnownCamera, SweepProgress } from '../contract/sweep.ts';
import { mayMirror } from './mayMirror.ts';
import { watchCamera, type CameraDeath, type CameraWatchAsk } from './cameraWatch.ts';
import { withEdgeAtSight, withoutEdge } from './edgePointAtSight.ts';
import { startLiveFilm, type LiveFilm } from './films/liveFilm.ts';
import { feedLivePictures, feedOwnPictures, type FeedEnd } from './livePictures.ts';
import type { MeasureWorker } from './measureWorker.ts';
import type { SweepRun } from './sessionStore.ts';
import type { SightKeeper } from './sightKeeper.ts';
import type { SignKeeper } from './signKeeper.ts';

export interface LiveTools {
  readonly worker: MeasureWorker;
  readonly known: SightKeeper;
  readonly signs: SignKeeper;
  readonly showPreview: ShowPicture;
  /** Where sweeps are kept while they go on; null when nowhere. */
  readonly shelf: FilmShelf | null;
  /** Whether the person wants films of them. */
  readonly isFilmWanted: boolean;
}

export type LiveEnd = FeedEnd | CameraDeath | 'enough' | 'change-sight' | 'begin-sweep';

/** What stays the same from opening the camera to letting it go. */
export interface LiveCamera {
  readonly stream: MediaStream;
  readonly source: LiveSourceKind;
  /** Gives the pictures in place of the stream. */
  readonly feed: OwnFeed | null;
  readonly errand: SweepErrand;
  readonly earlier: AcceptedReading | null;
}

/** From the start of one reader to its end. */
export interface Stretch {
  readonly phase: 'sighting' | 'sweeping';
  readonly setup: SweepSetup;
  readonly known: KnownCamera | null;
  readonly notice: Notice | null;
  /** Times that the worker died in this phase. */
  readonly crashes: number;
}

interface StretchEnd {
  readonly why: LiveEnd;
  readonly progress: SweepProgress | null;
  /** What is kept of a camera's sweep; whoever gets it ends it. */
  readonly film: LiveFilm | null;
}

/** Runs one stretch to its end, whatever ends it. */
export async function runStretch(
  run: SweepRun,
  { worker, showPreview, shelf, isFilmWanted }: LiveTools,
  { stream, source, feed, errand, earlier }: LiveCamera,
  { phase, setup, known, notice }: Stretch,
  asked: Promise<LiveEnd>,
  end: (why: LiveEnd) => void,
): Promise<StretchEnd> {
  let latest: SweepProgress | null = null;
  let isOver = false;
  const isSight = phase === 'sighting';
  const shown = { source, errand, setup, stream, notice, progress: null, framesDropped: 0 };
  if (isSight) run.showSight(shown);
  else run.show({ ...shown, fraction: null });
  const update = isSight ? run.updateSight : run.update;
  const started = await worker.startLive(
    setup,
    {
      ...(earlier ? { earlier } : {}),
      ...(known ? { sameCamera: known } : {}),
      followOnly: isSight,
      mayMirror: mayMirror(stream),
      askedSense: ASKED_SENSE,
    },
    {
      progress(progress) {
        if (isOver) return;
        latest = progress;
        update({ progress });
        if (progress.enough && !isSight) end('enough');
      },
      preview: (picture, overlay) =>
        run.isCurrent() && !isOver ? showPreview({ picture, overlay }) : picture.close(),
    },
  );
  const { wheelId, assumed } = errand;
  const isKept = started.ok && !isSight && source === 'camera' && shelf !== null;
  const start = { wheelId, setup, assumed, isFilmed: isFilmWanted };
  const film = isKept ? await startLiveFilm(worker, shelf, start) : null;
  const why = started.ok
    ? await untilEnd({ stream, feed }, worker, asked, {
        onDropped: (framesDropped) => update({ framesDropped }),
        onBack: () => update({ notice: noticeFor('page-was-hidden') }),
        hasOwnClock: feed !== null,
      })
    : 'worker-crashed';
  isOver = true;
  return { why, progress: latest, film };
}

async function untilEnd(
  { stream, feed: own }: Pick<LiveCamera, 'stream' | 'feed'>,
  worker: MeasureWorker,
  asked: Promise<LiveEnd>,
  watchAsk: CameraWatchAsk,
): Promise<LiveEnd> {
  const feed = own ? feedOwnPictures(own, worker) : feedLivePictures(stream, worker);
  const watch = watchCamera(stream, worker, feed, watchAsk);
  try {
    const why = await Promise.race([asked, feed.ended, watch.died]);
    if (why !== 'worker-hung') return why;
    worker.giveUp('it does not answer');
    return 'worker-crashed';
  } finally {
    watch.stop();
    feed.stop();
  }
}

/** What the person asked for while sighting. */
export interface WantedSight {
  readonly setup: SweepSetup;
  readonly change: SightChange;
  readonly assumed: readonly string[] | undefined;
}

interface AfterStretch {
  readonly tools: LiveTools;
  readonly progress: SweepProgress | null;
  readonly wanted: WantedSight | null;
}

/** What comes after a stretch: another one, reading what was seen, or the trouble to end with. */
export async function stretchAfter(
  why: LiveEnd,
  stretch: Stretch,
  { tools, progress, wanted }: AfterStretch,
): Promise<
  Stretch | 'read' | 'worker-failed' | 'camera-silent' | 'camera-unplugged' | 'camera-frozen'
> {
  const { phase, setup, crashes } = stretch;
  if (why === 'worker-crashed') {
    if (crashes > 0) return 'worker-failed';
    return { ...stretch, crashes: crashes + 1, notice: noticeFor('worker-restarted') };
  }
  if (phase === 'sweeping') return 'read';
  const calm = { ...stretch, crashes: 0, notice: null };
  switch (why) {
    case 'begin-sweep': {
      const sight = await tools.worker.sightNow();
      const known = sight.ok && sight.value ? { sight: sight.value, edgeKnown: true } : null;
      const swept = withEdgeAtSight(setup, progress?.overlay ?? null);
      return { ...calm, phase: 'sweeping', setup: swept, known };
    }
    case 'change-sight': {
      if (!wanted) return calm;
      const sight = wanted.change === 'edge' ? await tools.worker.sightNow() : null;
      const known = sight?.ok && sight.value ? { sight: sight.value, edgeKnown: false } : null;
      return { ...calm, setup: wanted.setup, known };
    }
    case 'picture-changed':
    case 'lens-changed':
      // A point of the old picture is another place in the new one.
      return {
        ...calm,
        setup: withoutEdge(setup),
        known: null,
        notice: noticeFor('sight-changed'),
      };
    case 'camera-silent':
    case 'camera-unplugged':
    case 'camera-frozen':
      return why;
    default:
      return calm;
  }
}
