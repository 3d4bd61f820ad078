/**
 * Help for each screen: a drawing with numbers, and a line for each number. Short enough to be
 * taken in at one look.
 */
export const help = {
  title: 'Help',
  open: 'Help for this screen',
  all: 'Help for every screen',
  topics: {
    shed: {
      name: 'The shed',
      lines: [
        'A wheel hangs here from its first measure until you take it out.',
        'The sign on it tells where it stands; the dark button, what comes next.',
        'The door takes it out. It stays in the logbook.',
      ],
    },
    wheel: {
      name: 'One wheel',
      lines: [
        'The steps hang on a plumb line: tick done, bob now, small ring later.',
        'The dark button does the next one.',
        'Below: all that was done, and weights put on by hand.',
      ],
    },
    bench: {
      name: 'The bench',
      lines: [
        'Weigh the wheel, measure out to the edge and to the weights.',
        'The centre of mass must hang below the ball’s centre, or the wheel tips.',
        'Full disc measured, half disc entered, broken ring assumed.',
      ],
    },
    stand: {
      name: 'The stand',
      lines: [
        'A hard, level plate on three screws, a steel ball on it.',
        'The laser at the side throws a level line on the tread.',
        'The tablet looks down at the line, held by an arm.',
      ],
    },
    sight: {
      name: 'The sight',
      lines: [
        'Aim so that line and tread edge run through the middle.',
        'Tape on the tread in line with the valve.',
        'Press the rim down under the camera: the edge must sink below the line.',
      ],
    },
    sweep: {
      name: 'The sweep',
      lines: [
        'Turn from the far side, slowly, clockwise: one turn in half a minute.',
        'The ring fills as the wheel turns. A little more than once round.',
        'It ends by itself. Let go of the wheel.',
      ],
    },
    reading: {
      name: 'The reading',
      lines: [
        'The solid drop hangs at the heavy spot.',
        'The open ring floats at the light spot: weight goes there.',
        'The wedge shows how well the place is known.',
      ],
    },
    weights: {
      name: 'Weights and the led hand',
      lines: [
        'Turn the wheel until the spot stands at the sight, then mark it.',
        'Stick the block on, its middle at the mark.',
        'Bar stretches where nothing may sit: the weights go to both sides of them.',
      ],
    },
    proof: {
      name: 'The proof',
      lines: [
        'A second turn with the weights on.',
        'Less than one weight left: the wheel is done.',
        'Shaking that stays is not cured by a static balance: see a tyre fitter.',
      ],
    },
    byEye: {
      name: 'By eye',
      lines: [
        'Find where the edge stands highest above the line: that side is light.',
        'Guess place and weight before you see what was measured.',
        'The difference shows how good your eye is.',
      ],
    },
  },
};
