import { lazy } from 'react';

/** Screens that are not there at the first glance are fetched when they are first opened. */
export const BenchScreen = lazy(() => import('../bench/BenchScreen.tsx'));
export const StandScreen = lazy(() => import('../bench/StandScreen.tsx'));
export const WheelScreen = lazy(() => import('../wheelJob/WheelScreen.tsx'));
export const SightScreen = lazy(() => import('../sight/SightScreen.tsx'));
export const WeightsScreen = lazy(() => import('../weights/WeightsScreen.tsx'));
export const LeadScreen = lazy(() => import('../lead/LeadScreen.tsx'));
export const ProofScreen = lazy(() => import('../proof/ProofScreen.tsx'));
export const ByEyeScreen = lazy(() => import('../byEye/ByEyeScreen.tsx'));
export const LogbookScreen = lazy(() => import('../logbook/LogbookScreen.tsx'));
export const LoggedWheelScreen = lazy(() => import('../logbook/LoggedWheelScreen.tsx'));
export const SettingsScreen = lazy(() => import('../settings/SettingsScreen.tsx'));
export const PracticeScreen = lazy(() => import('../practice/PracticeScreen.tsx'));
export const HelpScreen = lazy(() => import('../help/HelpScreen.tsx'));
