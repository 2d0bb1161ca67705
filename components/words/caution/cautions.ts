/** The usual cautions of the sewing room, by what can hurt. Common practice, no source; the maker's manual goes first. */
export const cautions: Readonly<Record<string, { title: string; sentences: string[] }>> = {
  blade: {
    title: 'Rotary cutter',
    sentences: [
      'The blade is as sharp as a scalpel. Cut away from yourself, and keep your fingers off the ruler’s edge.',
      'Close the blade each time you put the cutter down.',
    ],
  },
  scissors: {
    title: 'Scissors',
    sentences: ['Close them before you put them down, and hand them over with the grips first.'],
  },
  pins: {
    title: 'Pins',
    sentences: ['Take each pin out before it reaches the needle, and count them back into the tin.'],
  },
  needle: {
    title: 'Machine needle',
    sentences: [
      'Keep your fingers out of the needle’s way. Take your foot off the pedal before you reach under the presser foot.',
      'Switch the machine off before you change the needle or the foot.',
      'A needle can break in thick layers: sew them slowly, and protect your eyes.',
    ],
  },
  overlock: {
    title: 'Overlock machine',
    sentences: [
      'It cuts as it sews. Keep fingers, hair and sleeves away from its knife, and switch it off before you thread it.',
      'Take every pin out first: at the knife a pin breaks, and its pieces fly.',
    ],
  },
  iron: {
    title: 'Hot iron',
    sentences: [
      'Iron and steam burn. Keep fingers, cord and children clear of it.',
      'Stand it up when you let go of it, and unplug it when you leave.',
    ],
  },
  coating: {
    title: 'Coated cloth and heat',
    sentences: [
      'Coated and plastic cloth can melt and give off fumes. Test a scrap with a cool iron and a press cloth, and air the room.',
    ],
  },
  snap: {
    title: 'Snaps and their tools',
    sentences: [
      'Small parts can be swallowed. Keep them from small children, before and after they are set.',
      'Protect your eyes, and keep your fingers clear of the pliers or the hammer.',
    ],
  },
  parts: {
    title: 'Small parts',
    sentences: [
      'Buttons, rings and hooks can be swallowed. Keep them from small children, before and after they are on.',
      'A hand needle pricks. Put it into a cushion, never between your lips.',
    ],
  },
  zip: {
    title: 'Zips under the machine',
    sentences: [
      'Never sew over metal teeth or over the stops of a zip: the needle breaks, and its tip flies. Protect your eyes.',
      'Cross plastic teeth slowly, turning the wheel by hand. Move the slider out of the needle’s way first.',
    ],
  },
  magnet: {
    title: 'Magnets',
    sentences: [
      'A swallowed magnet is an emergency: get medical help at once. Keep magnets from children.',
      'Keep them away from pacemakers and other implants.',
    ],
  },
};

/** Stands under every caution. */
export const defersTo = 'Your maker’s manual, the rules where you live and qualified advice go before this page.';
