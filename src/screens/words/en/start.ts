export const start = {
  dropHere: 'Let go to open the films',
  cautionsTitle: 'Before you start',
  cautionsUnderstood: 'Understood',
  enterSetup: 'Enter the setup by hand',
  drawnHeavy: 'heavy',
  drawnLight: 'light',
  drawingText:
    'The wheel lies flat on a steel ball. Its heavy side sinks below the level laser line, its light side rises above it.',
};

/** Said once before the first sweep. Local rules and the vehicle's handbook have the last word. */
export const cautions: readonly { readonly about: string; readonly say: string }[] = [
  {
    about: 'Laser',
    say: 'Class 2 at most. Do not look into it, nor at its glint on the rim, nor through a lens. Keep the beam below eye level.',
  },
  {
    about: 'Wheel on the ball',
    say: 'It can roll off. Keep the stand low and your feet clear.',
  },
  { about: 'Lifting', say: 'Bend the knees, or lift with a second person.' },
  {
    about: 'Back on the vehicle',
    say: 'Tighten the nuts crosswise with a torque wrench to the maker’s figure, and again after the distance the handbook names.',
  },
  {
    about: 'Tyre fitter',
    say: 'Damaged, old or repaired tyres, and shaking that stays, belong with a qualified fitter.',
  },
  {
    about: 'First of all',
    say: 'Local rules and the vehicle’s handbook come before anything shown here.',
  },
];
