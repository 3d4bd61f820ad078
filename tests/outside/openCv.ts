import { loadOpenCV } from '@opencvjs/web';

export type OpenCv = Awaited<ReturnType<typeof loadOpenCV>>;
export type CvMat = InstanceType<OpenCv['Mat']>;

let loading: Promise<OpenCv> | null = null;

/** OpenCV.js, loaded once: the outside reference of some tests. This file alone loads it. */
export function openCv(): Promise<OpenCv> {
  return (loading ??= loadOpenCV());
}

/** Runs `use` with a place to keep Mats, which are all deleted after it, also when it throws. */
export function withMats<T>(use: (keep: <M extends { delete(): void }>(mat: M) => M) => T): T {
  const kept: { delete(): void }[] = [];
  try {
    return use((mat) => {
      kept.push(mat);
      return mat;
    });
  } finally {
    for (const mat of kept) mat.delete();
  }
}
