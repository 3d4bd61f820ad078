import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import { expect, type Locator, type Page } from '@playwright/test';

import type { NoticeCode } from '../../src/contract/notice.ts';
import type { PageRole } from '../../src/contract/session.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';
import type { SweepTruth } from '../tools/score.ts';
import { expectSaid, type HowSaid } from './faults/said.ts';

/** A sweep of `samples`, by its files. */
export function sampleSweep(name: string) {
  const path = (ending: string) => resolve(import.meta.dirname, `../../samples/${name}${ending}`);
  return {
    filmPath: path('.mp4'),
    setupPath: path('.setup.json'),
    setup: JSON.parse(readFileSync(path('.setup.json'), 'utf8')) as SweepSetup,
    truth: JSON.parse(readFileSync(path('.truth.json'), 'utf8')) as SweepTruth,
  };
}

export const FRONT_LEFT = sampleSweep('shed-front-left');

export type FilePayload = { name: string; mimeType: string; buffer: Buffer };

export function fileOf(name: string, content: Buffer | string, mimeType = ''): FilePayload {
  return { name, mimeType, buffer: Buffer.from(content) };
}

export const frontLeftSetupFile = () =>
  fileOf('sweep.setup.json', readFileSync(FRONT_LEFT.setupPath));

/** The first part of the sample, by bytes: as when copying it broke off. Some 11 seconds of 30. */
export const cutFilmFile = () =>
  fileOf('cut.mp4', readFileSync(FRONT_LEFT.filmPath).subarray(0, 900_000), 'video/mp4');

export function role(page: Page, name: PageRole | 'wheel-film'): Locator {
  return page.locator(`[data-role="${name}"]`);
}

export function main(
  page: Page,
  phase: 'choosing' | 'sweeping' | 'read',
  status?: 'ok' | 'refused',
) {
  return page.locator(`main[data-phase="${phase}"]${status ? `[data-status="${status}"]` : ''}`);
}

export async function chooseFiles(
  page: Page,
  files: readonly FilePayload[] | string[],
): Promise<void> {
  await role(page, 'sweep-files').setInputFiles(files as FilePayload[]);
}

/** Reason and remedy stand there; `evidence` is what was seen, beside them. */
export async function expectProblem(
  page: Page,
  code: NoticeCode,
  evidence?: RegExp,
  how?: HowSaid,
): Promise<void> {
  const problem = role(page, 'problem');
  await expectSaid(problem, code, how);
  if (evidence) await expect(problem).toContainText(evidence);
  await expect(main(page, 'choosing')).toBeVisible();
}

/** Opens the camera form, fills it in as a person would, and starts the sweep. */
export async function startCamera(page: Page, setup: SweepSetup): Promise<void> {
  await page.locator('[data-role="open-camera"]').click();
  const fill = async (path: string, value: number | undefined) =>
    page.locator(`input[name="${path}"]`).fill(value === undefined ? '' : String(value));
  await fill('wheel.massKg', setup.wheel.massKg);
  await fill('wheel.edgeRadiusMm', setup.wheel.edgeRadiusMm);
  await fill('wheel.weightRadiusMm', setup.wheel.weightRadiusMm);
  await fill('wheel.boreDiameterMm', setup.wheel.boreDiameterMm);
  await fill('stand.ballDiameterMm', setup.stand.ballDiameterMm);
  await fill('stand.pendulumDepthMm', setup.stand.pendulumDepthMm);
  await fill('stand.lineAbovePlateMm', setup.stand.lineAbovePlateMm);
  await fill('camera.downTiltDeg', setup.camera.downTiltDeg);
  await fill('camera.horizontalFovDeg', setup.camera.horizontalFovDeg);
  await fill('sight.valveMark.widthMm', setup.sight.valveMark.widthMm);
  await fill('weightStepG', setup.weightStepG);
  await page
    .locator('select[name="sight.valveMark.colour"]')
    .selectOption(setup.sight.valveMark.colour);
  await role(page, 'start-camera').click();
}

/** Addresses outside the page's own origin that were asked for; keep it and look at the end. */
export function foreignRequests(page: Page): string[] {
  const foreign: string[] = [];
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol === 'data:' || url.protocol === 'blob:') return;
    if (url.hostname !== 'localhost') foreign.push(request.url());
  });
  return foreign;
}
