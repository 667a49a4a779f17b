import type { AdviceEntry } from './advice.ts'

// Where a body could be hurt: pins, shears, weight on a neck, dizziness. Common practice.
const CLEAR_OF_SKIN = 'Lift the cloth clear of the body before a pin goes through it, points away from skin.'
const COUNT_PINS = 'Count pins in and out; lift the cloth clear of the body before a pin goes through it.'
const ON_THE_TABLE = 'Mark with chalk; cut on the table with the mock-up off, never with shears at the body.'
const AT_THE_NECK =
  'Ask before touching the neck, and let nothing pull on it. No pins or shears at the throat: chalk it, cut on the table.'
const ON_THE_SHOULDER = 'Put no weight on neck or shoulders. Lift the cloth clear before a pin goes through it.'
const ARM_ON_SHOULDER =
  'Sit at eye level; the arm rests on your shoulder, never on your head. Reaching tires: stop on pain or dizziness.'
const STAND_EASY = 'Let the performer stand as usual, knees loose; a pause, or a chair, on dizziness.'

/**
 * What is seen at a fitting and what to try, in the order to try it: common practice throughout. Snippets go under
 * `corrections:`; their amounts are a first try, to be replaced by what was pinned.
 */
export const ADVICE: readonly AdviceEntry[] = [
  // Cap: the upper sleeve and how it hangs.

  {
    id: 'tight-upper-arm',
    places: ['cap'],
    seen: 'lines run level round the upper arm at the cap line; the sleeve binds there',
    words: ['tight', 'strained', 'biceps', 'muscle', 'pulls across the arm', 'sleeve too narrow', 'flexed'],
    causes: [
      {
        cause: 'the cap is too narrow two thirds up, where the arm is fullest',
        pin: 'open the stitching at the cap line on both sides and let it spread; pin the new line, to nothing at the notches',
        snippet: `- do: let out
  seam: cap
  at: [ { line: cap line, side of cap: front }, { line: cap line, side of cap: back } ]
  by: 3/8 in
  taper to: [ shoulder notch, front notch, back notch ]`,
        costs: 'the cap is a little longer: more ease over the shoulder. If it puckers, rematch cap',
      },
      {
        cause: 'the whole sleeve is too narrow for the arm',
        pin: 'let both underarm seams out alike from the underarm to above the elbow',
        snippet: `- do: widen
  at: upper arm
  by: 1/2 in`,
        costs: 'the cap keeps its length and becomes lower: more lift, and small folds under the arm at rest',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'fold-front-notch',
    places: ['cap', 'underarm'],
    seen: 'a vertical fold stands in the sleeve near the front notch, in front of the arm',
    words: ['cloth bunches', 'too much cloth', 'crease beside the armpit', 'loose in front'],
    causes: [
      {
        cause: 'the front of the cap is too full below its notch',
        pin: 'pinch the fold out along the seam between the front notch and the underarm, to nothing at both',
        snippet: `- do: hollow
  seam: front cap
  by: 1/4 in`,
        costs:
          'the front cap is a little longer below the notch than its armscye: rematch cap, or hollow the armscye too',
      },
      {
        cause: 'the armscye itself stands too far forward under the arm',
        pin: 'chalk where the arm meets the body in front, and hollow cap and armscye to it alike',
        snippet: `- do: hollow
  seam: front cap
  by: 1/8 in
- do: hollow
  seam: front armscye
  by: 1/8 in`,
        costs: 'the front is narrower under the arm; walk the front cap afterwards, rematch cap if it no longer meets',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'fold-back-notch',
    places: ['cap', 'back'],
    seen: 'a vertical fold stands in the sleeve behind the arm, near the back notches',
    words: ['cloth bunches', 'too much cloth behind', 'loose at the back of the sleeve'],
    causes: [
      {
        cause: 'the back of the cap is too full below its notches',
        pin: 'pinch out half of the fold only: the back needs room to reach; look again with the arm forward',
        snippet: `- do: hollow
  seam: back cap
  by: 1/8 in`,
        costs: 'less room for reaching forward; the back cap no longer meets its armscye below the notch: rematch cap',
      },
      {
        cause: 'the sleeve is set too far back for the arm',
        pin: 'open the cap from notch to notch, swing the wrist forward until the fold goes, pin the cap again',
        snippet: `- do: turn sleeve
  direction: forward
  by: 1/4 in`,
        costs: 'no line changes; ease moves from the back to the front of the cap',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'arm-forward-of-sleeve',
    places: ['cap', 'elbow'],
    seen: 'drag lines slant from the back of the crown to the front of the elbow or wrist; the sleeve twists forward',
    words: ['twisting', 'pitch', 'sleeve hangs behind the arm', 'diagonal lines', 'touches the front of the wrist'],
    causes: [
      {
        cause: 'the arm hangs farther forward than the sleeve',
        pin: 'open the cap from notch to notch, swing the wrist forward until the lines go, mark the shoulder on the cap',
        snippet: `- do: turn sleeve
  direction: forward
  by: 1/4 in`,
        costs: 'no line changes; the underarm seam of the sleeve meets the bodice in front of the side seam',
      },
      {
        cause: 'the forearm bends forward more than the elbow darts do',
        pin: 'lines begin at the elbow only: pin the elbow darts deeper, with the arm hanging',
        snippet: `- do: elbow dart intake
  intake: 1 1/2 in`,
        costs: 'the wrist swings forward; both underarm seams keep their lengths',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'arm-behind-sleeve',
    places: ['cap', 'elbow'],
    seen: 'drag lines slant from the front of the crown to the back of the elbow; the sleeve twists back',
    words: ['twisting', 'pitch', 'sleeve hangs before the arm', 'diagonal lines', 'touches the back of the wrist'],
    causes: [
      {
        cause: 'the arm hangs farther back than the sleeve',
        pin: 'open the cap from notch to notch, swing the wrist back until the lines go, mark the shoulder on the cap',
        snippet: `- do: turn sleeve
  direction: back
  by: 1/4 in`,
        costs: 'no line changes; the underarm seam of the sleeve meets the bodice behind the side seam',
      },
      {
        cause: 'the forearm is straighter than the elbow darts',
        pin: 'lines begin at the elbow only: pin less into the elbow darts',
        snippet: `- do: elbow dart intake
  intake: 1 in`,
        costs: 'the wrist swings back; there is less room for the bent elbow',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'cap-too-tall',
    places: ['cap', 'shoulder'],
    seen: 'a level fold lies across the sleeve just below the shoulder',
    words: ['cap too high', 'cap too long', 'roll below the shoulder', 'horizontal crease', 'excess height'],
    causes: [
      {
        cause: 'the cap is taller than the arm needs',
        pin: 'pin the fold out level below the shoulder, to nothing at the notches',
        snippet: `- do: lower cap
  by: 1/4 in`,
        costs: 'the cap is shorter and has less ease; if it becomes too short for its armscye, rematch cap',
      },
      {
        cause: 'there is more ease than the cloth lies down with',
        pin: 'draw up the ease stitching again, all of it above the notches; if the fold stays, less ease',
        snippet: `- do: rematch cap
  ease: 5 %`,
        costs: 'the cap is drawn anew over the same armscye, a little lower; biceps width stays',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'cap-too-short',
    places: ['cap', 'underarm'],
    seen: 'lines slant from the crown down to the underarm on both sides; the outside of the hem swings up',
    words: [
      'cap too low',
      'cap too flat',
      'hem of the sleeve lifts',
      'wrist swings out',
      'diagonal lines on both sides',
    ],
    causes: [
      {
        cause: 'the cap is not tall enough for the hanging arm',
        pin: 'open the cap over the shoulder from notch to notch and let the sleeve drop; measure the gap at the top',
        snippet: `- do: raise cap
  by: 3/8 in`,
        costs: 'the arm lifts less before the bodice rises; the cap has more ease: rematch cap if it puckers',
      },
      {
        cause: 'the sleeve is wider than it needs to be, which flattens its cap',
        pin: 'pinch the underarm seam in from the underarm to above the elbow; the lines must go',
        snippet: `- do: narrow
  at: upper arm
  by: 1/4 in`,
        costs: 'less room round the upper arm: look at it flexed',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'puckers-at-crown',
    places: ['cap', 'shoulder'],
    seen: 'the cap puckers or gathers over the shoulder',
    words: ['too full', 'too much ease', 'gathers', 'pleats in the seam', 'wrinkled seam', 'dimples'],
    causes: [
      {
        cause: 'the ease is not spread',
        pin: 'two rows of ease stitching from notch to notch, drawn up, spread and steamed before the sleeve is set',
        costs: 'nothing on the pattern',
      },
      {
        cause: 'the cap has more ease than this cloth takes',
        pin: 'pinch the cap out evenly from the notches over the shoulder',
        snippet: `- do: rematch cap
  ease: 4 %`,
        costs: 'the cap is drawn anew over the same armscye, lower; or keep it and cut a cloth that takes more',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'cap-strained-at-crown',
    places: ['cap', 'shoulder'],
    seen: 'the cap is strained flat over the end of the shoulder; short lines pull at the seam',
    words: ['tight over the shoulder', 'too little ease', 'shoulder bone shows through', 'seam pulls'],
    causes: [
      {
        cause: 'there is too little ease over the shoulder',
        pin: 'open the cap over the shoulder and let it rise; pin where it lies round',
        snippet: `- do: rematch cap
  ease: 8 %`,
        costs: 'the cap is a little taller; check that the cloth takes this ease',
      },
      {
        cause: 'the shoulder is square or muscular and needs room at its end',
        pin: 'let the cap out at the shoulder notch, to nothing at the notches',
        snippet: `- do: let out
  seam: cap
  at: shoulder notch
  by: 1/4 in
  taper to: [ front notch, back notch ]`,
        costs: 'the cap is longer: more ease over the shoulder; rematch cap if it puckers elsewhere',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'hollow-below-shoulder',
    places: ['shoulder', 'cap'],
    seen: 'the sleeve is hollow just below the end of the shoulder; the cloth stands off the arm there',
    words: ['dent', 'collapses', 'empty', 'stands away from the arm', 'caved in'],
    causes: [
      {
        cause: 'the shoulder is too long, so that the cap begins on the arm',
        pin: 'pin the armscye seam back to the end of the shoulder bone',
        snippet: `- do: shoulder length
  direction: shorter
  by: 1/4 in`,
        costs: 'the armscye is a little longer at the top: walk the cap, and look at the width across the chest',
      },
      {
        cause: 'the cap is taller than the arm fills',
        pin: 'pin the hollow out level, to nothing at the notches',
        snippet: `- do: lower cap
  by: 1/4 in`,
        costs: 'the cap has less ease; if it becomes too short for its armscye, rematch cap',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },

  // Underarm: reach, lift, and what cuts in or stands away.

  {
    id: 'cannot-reach',
    places: ['underarm', 'back'],
    seen: 'the arm cannot reach forward or up; the bodice rises with the arm',
    words: [
      'binds on reaching',
      'lifting the arm',
      'waist rides up',
      'movement',
      'dance',
      'fight',
      'comfortable at rest',
    ],
    causes: [
      {
        cause: 'the sleeve is too short under the arm for the lift',
        pin: 'open the underarm of the sleeve to 1 1/2 in on both sides, reach, and measure how far it gapes',
        snippet: `- do: underarm reach
  by: 1/2 in
  along cap: 1 1/2 in`,
        costs: 'the cap is lower: small folds under the arm at rest; both underarm seams of the sleeve grow alike',
      },
      {
        cause: 'the back is too narrow when the arms come forward',
        pin: 'arms forward: let the back armscye out at the width line until the strain goes',
        snippet: `- do: back width
  direction: wider
  by: 1/4 in`,
        costs: 'folds beside the shoulder blades at rest; the back armscye is a little longer: rematch cap',
      },
      {
        cause: 'the armscye is too low, so that the sleeve pulls the bodice up',
        pin: 'pin a scrap into the armscye under the arm, up to where the arm still moves freely',
        snippet: `- do: raise underarm
  by: 3/8 in
- do: rematch cap`,
        costs: 'the armscye is smaller; the cap is drawn again to meet it. Too high cuts in: leave a finger of room',
      },
    ],
    caution: ARM_ON_SHOULDER,
  },
  {
    id: 'armscye-cuts-in',
    places: ['underarm'],
    seen: 'the armscye cuts in under the arm or into the front of the arm at rest',
    words: ['tight armhole', 'digs in', 'rubs', 'sore', 'too high under the arm', 'binds at rest'],
    causes: [
      {
        cause: 'the armscye is too high',
        pin: 'chalk how far below the armpit the line should lie; clip only the allowance, with the mock-up off',
        snippet: `- do: lower underarm
  by: 1/4 in
- do: rematch cap`,
        costs: 'the arm lifts the bodice more: no lower than comfort needs. The cap is drawn again to meet the armscye',
      },
      {
        cause: 'the armscye stands too far forward in front of the arm',
        pin: 'chalk the crease of the arm in front, between the underarm and the front notch',
        snippet: `- do: hollow
  seam: front armscye
  by: 1/4 in
- do: rematch cap`,
        costs: 'the front is narrower under the arm; the cap is drawn again to the longer armscye',
      },
    ],
    caution: ON_THE_TABLE,
  },
  {
    id: 'low-armscye',
    places: ['underarm'],
    seen: 'the armscye lies low; cloth stands away under the arm, or skin shows',
    words: ['armhole too big', 'armhole too deep', 'gapes under the arm', 'drags on the bodice'],
    causes: [
      {
        cause: 'the armscye is deeper than the body',
        pin: 'pin a scrap in under the arm to a finger below the armpit',
        snippet: `- do: raise underarm
  by: 3/8 in
- do: rematch cap`,
        costs: 'the armscye is smaller and the cap is drawn again to meet it; the arm lifts more freely',
      },
      {
        cause: 'the side seam is loose at the underarm',
        pin: 'pin the side seam in at the underarm, to nothing at the waist',
        snippet: `- do: take in
  seam: side seam
  by: 1/8 in
  taper to: waist
- do: rematch cap`,
        costs: 'less ease at the bust; the armscye is smaller and the cap is drawn again to meet it',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'folds-under-arm',
    places: ['underarm', 'cap'],
    seen: 'folds hang under the arm at rest, after reach or width was given to the sleeve',
    words: ['too much cloth under the arm', 'bulky', 'bunches', 'wrinkles in the armpit', 'gusset'],
    causes: [
      {
        cause: 'more reach was given than the part needs',
        pin: 'let the performer do the movement of the part; if it is smaller than what was fitted for, take reach back',
        costs: 'nothing yet: write voided: and the reason at the underarm reach, or a smaller amount in its place',
      },
      {
        cause: 'the cap is low for a sleeve that mostly hangs',
        pin: 'open the cap over the shoulder and let the sleeve drop until the folds go',
        snippet: `- do: raise cap
  by: 1/4 in`,
        costs: 'the arm lifts less before the bodice rises; the cap has more ease: rematch cap if it puckers',
      },
    ],
    caution: ARM_ON_SHOULDER,
  },

  // Elbow and wrist.

  {
    id: 'elbow-binds',
    places: ['elbow'],
    seen: 'the sleeve binds at the elbow when the arm bends',
    words: ['tight elbow', 'strains when bent', 'cannot bend', 'folds inside the elbow'],
    causes: [
      {
        cause: 'the elbow darts give too little shape',
        pin: 'arm bent: pin the darts deeper until the inside of the elbow lies flat',
        snippet: `- do: elbow dart intake
  intake: 1 1/2 in`,
        costs: 'the wrist swings forward; the straight arm shows fullness at the elbow',
      },
      {
        cause: 'the sleeve is too narrow at the elbow',
        pin: 'arm bent: let both underarm seams out at the elbow, to nothing at underarm and wrist',
        snippet: `- do: widen
  at: elbow
  by: 1/2 in`,
        costs: 'a looser line between upper arm and wrist',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'elbow-darts-misplaced',
    places: ['elbow'],
    seen: 'the elbow darts lie above or below the point of the elbow',
    words: ['darts too high', 'darts too low', 'fullness beside the elbow', 'wrong place'],
    causes: [
      {
        cause: 'the darts lie above the elbow',
        pin: 'arm bent: mark the point of the elbow with chalk; it lies between the two darts',
        snippet: `- do: move elbow darts
  direction: down
  by: 1/2 in`,
        costs: 'nothing: intake, length and width stay',
      },
      {
        cause: 'the darts lie below the elbow',
        pin: 'arm bent: mark the point of the elbow with chalk; it lies between the two darts',
        snippet: `- do: move elbow darts
  direction: up
  by: 1/2 in`,
        costs: 'nothing: intake, length and width stay',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'elbow-darts-poke',
    places: ['elbow'],
    seen: 'the elbow darts poke at their points',
    words: ['bubble', 'pointed', 'sticks out', 'dart ends'],
    causes: [
      {
        cause: 'the darts run too near to the point of the elbow',
        pin: 'pin them out 1/4 in shorter; press over a ham',
        snippet: `- do: move elbow darts
  direction: back
  by: 1/4 in`,
        costs: 'nothing: intake and seams stay',
      },
      {
        cause: 'the forearm needs less bend than the darts give',
        pin: 'pin less into both darts until they lie flat with the arm hanging',
        snippet: `- do: elbow dart intake
  intake: 1 in`,
        costs: 'the wrist swings back; there is less room for the bent elbow',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'sleeve-short-when-bent',
    places: ['elbow'],
    seen: 'the sleeve is too short, or draws up the wrist when the arm bends',
    words: ['sleeve length', 'wrist shows', 'sleeve too short', 'does not reach the wrist', 'rides up the arm'],
    causes: [
      {
        cause: 'it is short above the elbow: the darts sit too high as well',
        pin: 'cut the sleeve across above the elbow on the table, or pin a strip on at the wrist and note the amount',
        snippet: `- do: lengthen
  part: above elbow
  by: 1/2 in`,
        costs: 'the elbow darts go down with it; both underarm seams grow alike',
      },
      {
        cause: 'it is short below the elbow: the darts lie where they should',
        pin: 'pin a strip on at the wrist, arm bent, to the wrist bone',
        snippet: `- do: lengthen
  part: below elbow
  by: 1/2 in`,
        costs: 'nothing: both underarm seams grow alike',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'tight-wrist',
    places: ['elbow'],
    seen: 'the wrist is tight, or the hand does not pass through it',
    words: ['hand', 'cuff', 'forearm', 'quick change', 'cannot get the sleeve on'],
    causes: [
      {
        cause: 'the wrist is narrower than the hand',
        pin: 'leave the back underarm seam open 2 1/2 in from the wrist and plan a placket, hooks or snaps',
        costs: 'nothing on the pattern; a quick change needs a fastening that one hand opens',
      },
      {
        cause: 'the wrist is to be wider',
        pin: 'let both underarm seams out at the wrist, to nothing at the elbow',
        snippet: `- do: widen
  at: wrist
  by: 1/2 in`,
        costs: 'the sleeve no longer lies close at the wrist',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },

  // Shoulder.

  {
    id: 'sloping-shoulder',
    places: ['shoulder', 'neck'],
    seen: 'folds slant from the neck point down to the underarm; cloth is loose at the end of the shoulder',
    words: ['sloping', 'drooping shoulder', 'diagonal folds', 'collapses at the armscye'],
    causes: [
      {
        cause: 'the shoulder slopes more than the pattern',
        pin: 'pin the shoulder seam in at its end, to nothing at the neck',
        snippet: `- do: shoulder slope
  direction: down
  by: 3/8 in`,
        costs:
          'the whole armscye moves down with the shoulder, so that the sleeve still fits; look at the width across the chest',
      },
    ],
    caution: ON_THE_SHOULDER,
  },
  {
    id: 'square-shoulder',
    places: ['shoulder', 'neck'],
    seen: 'lines pull from the end of the shoulder toward the neck; the neckline stands away',
    words: ['square', 'strained', 'raised shoulder', 'collar stands off', 'tight over the shoulder bone'],
    causes: [
      {
        cause: 'the shoulder is squarer than the pattern',
        pin: 'open the shoulder seam at its end and let it rise, to nothing at the neck',
        snippet: `- do: shoulder slope
  direction: up
  by: 3/8 in`,
        costs: 'the whole armscye moves up with the shoulder, so that the sleeve still fits; the side seam is longer',
      },
    ],
    caution: ON_THE_SHOULDER,
  },
  {
    id: 'uneven-shoulders',
    places: ['shoulder'],
    seen: 'one shoulder is lower: folds slant to the underarm on one side only',
    words: ['uneven', 'one side', 'asymmetrical', 'left and right differ', 'right shoulder', 'left shoulder'],
    causes: [
      {
        cause: 'the shoulders differ',
        pin: 'pin the lower side only, at the end of the shoulder, to nothing at the neck; say which side is the wearer’s',
        snippet: `- do: shoulder slope
  direction: down
  by: 3/8 in
  side: right`,
        costs: 'left and right become pieces of their own from here on; the side seam of that side is shorter',
      },
    ],
    caution: ON_THE_SHOULDER,
  },
  {
    id: 'seam-behind-shoulder',
    places: ['shoulder', 'neck'],
    seen: 'the shoulder seam lies behind the top of the shoulder; the front rides up, the neckline pulls back',
    words: ['forward shoulder', 'rounded posture', 'seam rolls back', 'shoulder seam in the wrong place'],
    causes: [
      {
        cause: 'the shoulder stands forward',
        pin: 'chalk the top of the shoulder from neck to end; measure how far before the seam it lies',
        snippet: `- do: forward shoulder
  by: 1/4 in`,
        costs: 'the front armscye loses what the back gains; the shoulder notch of the sleeve moves with it',
      },
    ],
    caution: ON_THE_SHOULDER,
  },
  {
    id: 'shoulder-too-long',
    places: ['shoulder', 'cap'],
    seen: 'the armscye seam falls off the shoulder onto the arm',
    words: ['shoulder too wide', 'drops off', 'seam on the arm', 'narrow shoulders'],
    causes: [
      {
        cause: 'the shoulder is shorter than the pattern',
        pin: 'chalk the end of the shoulder bone; pin the seam back to it',
        snippet: `- do: shoulder length
  direction: shorter
  by: 1/4 in`,
        costs: 'the armscye is a little longer at the top: walk the cap, and look at the width across the chest',
      },
    ],
    caution: ON_THE_SHOULDER,
  },
  {
    id: 'shoulder-too-short',
    places: ['shoulder', 'cap'],
    seen: 'the armscye seam ends on the shoulder, short of its end; the sleeve pulls up there',
    words: ['shoulder too narrow', 'seam creeps in', 'broad shoulders', 'tight across the shoulder'],
    causes: [
      {
        cause: 'the shoulder is longer than the pattern',
        pin: 'open the cap over the shoulder and chalk the end of the shoulder bone on the allowance or a scrap',
        snippet: `- do: shoulder length
  direction: longer
  by: 1/4 in`,
        costs: 'the armscye is a little shorter at the top: walk the cap, rematch cap if its ease has changed',
      },
    ],
    caution: ON_THE_SHOULDER,
  },

  // Neck.

  {
    id: 'neck-chokes',
    places: ['neck'],
    seen: 'the neckline chokes; lines run round the base of the neck',
    words: ['tight neck', 'throat', 'cannot swallow', 'cannot sing', 'too high', 'collar'],
    causes: [
      {
        cause: 'the neckline is too high in front',
        pin: 'open the back first; chalk the pit of the throat while the performer sings or swallows',
        snippet: `- do: drop neckline
  at: center front
  by: 1/4 in`,
        costs: 'the neckline is longer: facing and collar with it',
      },
      {
        cause: 'the neckline is too narrow at the sides',
        pin: 'chalk where neck and shoulder meet on both sides',
        snippet: `- do: drop neckline
  at: neck point
  by: 1/8 in`,
        costs: 'the shoulder is shorter at the neck; the neckline is longer: facing and collar with it',
      },
    ],
    caution: AT_THE_NECK,
  },
  {
    id: 'neck-gapes-front',
    places: ['neck', 'front'],
    seen: 'the neckline gapes in front, or shows what it should cover',
    words: ['gaping', 'too low', 'too wide', 'stands off the chest', 'loose neckline'],
    causes: [
      {
        cause: 'the neckline is cut too low',
        pin: 'pin a scrap in up to the pit of the throat, or to where the design wants it',
        snippet: `- do: raise neckline
  at: center front
  by: 1/4 in`,
        costs: 'the neckline is shorter: facing and collar with it',
      },
      {
        cause: 'the neckline is cut too wide at the sides',
        pin: 'pin scraps in at both sides up to where neck and shoulder meet',
        snippet: `- do: raise neckline
  at: neck point
  by: 1/8 in`,
        costs: 'the shoulder is longer at the neck; the neckline is shorter: look again that it does not choke',
      },
    ],
    caution: AT_THE_NECK,
  },
  {
    id: 'neck-stands-away-back',
    places: ['neck', 'back'],
    seen: 'the neckline stands away at the back of the neck',
    words: ['gapes at the back', 'collar stands off', 'head forward', 'loose at the nape'],
    causes: [
      {
        cause: 'the back neckline is too low for a head carried forward',
        pin: 'pin a scrap in up to the bone of the nape',
        snippet: `- do: raise neckline
  at: center back
  by: 1/4 in`,
        costs: 'the back neckline is shorter: facing and collar with it',
      },
      {
        cause: 'the back is too short over the shoulder blades and pulls the neckline down',
        pin: 'cut across the mock-up at the blades on the table; on the body let it open until the nape is covered',
        snippet: `- do: round back
  by: 1/4 in`,
        costs: 'center back is longer; a shoulder dart takes up what the shoulder must not gain',
      },
    ],
    caution: AT_THE_NECK,
  },

  // Front.

  {
    id: 'front-armscye-gapes',
    places: ['front', 'underarm'],
    seen: 'the front armscye gapes; a loose fold points from it to the bust',
    words: ['gaping armhole', 'stands away in front', 'full bust', 'loose at the armscye'],
    causes: [
      {
        cause: 'the bust is fuller than the dart gives',
        pin: 'pin the fold out toward the bust point, let the dart take it up, and let the front waist drop by as much',
        snippet: `- do: dart intake
  dart: bust dart
  of: front
  direction: more
  by: 1/4 in
- do: let out
  seam: front waist
  by: 1/4 in`,
        costs:
          'the front is longer down the center; the side seams still meet, but mark the side notch of the front again',
      },
      {
        cause: 'the front shoulder slopes more than the pattern',
        pin: 'pin the front shoulder in at its end, to nothing at the neck',
        snippet: `- do: take in
  seam: front shoulder
  at: shoulder point
  by: 1/4 in
  taper to: neck point
- do: rematch cap`,
        costs: 'the front armscye is shorter; the cap is drawn again to meet it',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'lines-from-bust',
    places: ['front'],
    seen: 'lines run from the bust to the side seam; the hem lifts in front',
    words: ['tight bust', 'full bust', 'front too short', 'waist rises in front', 'side seam pulls forward'],
    causes: [
      {
        cause: 'the front is too short over the bust',
        pin: 'open the bust dart and the front waist; let the front drop level; pin the dart deeper',
        snippet: `- do: dart intake
  dart: bust dart
  of: front
  direction: more
  by: 1/4 in
- do: let out
  seam: front waist
  by: 1/4 in`,
        costs:
          'the front is longer down the center; the side seams still meet, but mark the side notch of the front again',
      },
      {
        cause: 'the bodice is too narrow at the bust',
        pin: 'open the side seam at the underarm and let it spread, to nothing at the waist',
        snippet: `- do: let out
  seam: front side seam
  by: 1/4 in
  taper to: waist
- do: rematch cap`,
        costs: 'more ease at the bust; the front armscye is longer and the cap is drawn again to meet it',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'darts-miss-bust',
    places: ['front'],
    seen: 'the darts point above or below the fullest part of the bust',
    words: [
      'bust point',
      'fullness above the bust',
      'fullness below the bust',
      'dart too high',
      'dart too low',
      'bubble',
    ],
    causes: [
      {
        cause: 'the bust is lower than the darts',
        pin: 'mark the bust point with chalk or a sticker over the wearer’s own underpinnings for the part',
        snippet: `- do: move bust point
  direction: down
  by: 1/2 in`,
        costs: 'nothing: the darts turn to it, their intakes stay',
      },
      {
        cause: 'the bust is higher than the darts, as with a corset under it',
        pin: 'mark the bust point with chalk or a sticker over the wearer’s own underpinnings for the part',
        snippet: `- do: move bust point
  direction: up
  by: 1/2 in`,
        costs: 'nothing: the darts turn to it, their intakes stay',
      },
    ],
    caution: `Ask before touching; let the performer place the mark. ${COUNT_PINS}`,
  },
  {
    id: 'front-strained',
    places: ['front'],
    seen: 'the front is strained between the armscyes',
    words: ['tight across the chest', 'broad chest', 'lines across the chest', 'pulls in front'],
    causes: [
      {
        cause: 'the front is too narrow above the bust',
        pin: 'open the front armscye at the width line and let it spread, to nothing at the underarm and the shoulder',
        snippet: `- do: front width
  direction: wider
  by: 1/8 in`,
        costs: 'the front armscye changes its length a little: walk the cap, rematch cap if its ease has changed',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'front-too-wide',
    places: ['front'],
    seen: 'vertical folds stand in front of the arm, between armscye and bust',
    words: ['loose across the chest', 'narrow chest', 'too wide', 'armscye rubs the front of the arm'],
    causes: [
      {
        cause: 'the front is too wide above the bust',
        pin: 'chalk where arm and chest meet; pin the front armscye in at the width line',
        snippet: `- do: front width
  direction: narrower
  by: 1/8 in`,
        costs: 'the front armscye changes its length a little: walk the cap, rematch cap if its ease has changed',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },

  // Back.

  {
    id: 'round-back',
    places: ['back', 'neck'],
    seen: 'the back rides up; lines run across the shoulder blades; the waist rises at center back',
    words: ['round back', 'stooped', 'posture', 'back too short', 'shoulder blades', 'hump'],
    causes: [
      {
        cause: 'the back is too short over the shoulder blades',
        pin: 'cut across the mock-up at the blades on the table; on the body let it open until the waist lies level',
        snippet: `- do: round back
  by: 3/8 in`,
        costs: 'center back is longer; a shoulder dart takes up what the shoulder must not gain',
      },
      {
        cause: 'the back is too narrow over the shoulder blades',
        pin: 'let the back armscye out at the width line until the lines go',
        snippet: `- do: back width
  direction: wider
  by: 1/4 in`,
        costs: 'the back armscye is a little longer: walk the cap, rematch cap if its ease has changed',
      },
    ],
    caution: ON_THE_TABLE,
  },
  {
    id: 'back-pulls-reaching',
    places: ['back', 'underarm'],
    seen: 'the back pulls between the armscyes when the arms reach forward',
    words: ['tight across the back', 'strains', 'movement', 'rowing', 'fight', 'split seam'],
    causes: [
      {
        cause: 'the back is too narrow for the reach',
        pin: 'arms forward: let the back armscye out at the width line until the strain goes',
        snippet: `- do: back width
  direction: wider
  by: 1/4 in`,
        costs: 'folds beside the shoulder blades at rest; the back armscye is a little longer: rematch cap if needed',
      },
      {
        cause: 'the sleeve holds the arm back under the arm',
        pin: 'open the underarm of the sleeve to 1 1/2 in on both sides, reach, and measure how far it gapes',
        snippet: `- do: underarm reach
  by: 3/8 in
  along cap: 1 1/2 in`,
        costs: 'the cap is lower: small folds under the arm at rest',
      },
    ],
    caution: ARM_ON_SHOULDER,
  },
  {
    id: 'back-too-wide',
    places: ['back'],
    seen: 'vertical folds stand in the back beside the armscye at rest',
    words: ['loose back', 'narrow back', 'too wide', 'folds beside the shoulder blades'],
    causes: [
      {
        cause: 'the back is wider than the part needs',
        pin: 'first reach forward: these folds are the room to reach. Pin out only what stays loose then',
        snippet: `- do: back width
  direction: narrower
  by: 1/8 in`,
        costs: 'less room for reaching; the back armscye changes its length a little: rematch cap if needed',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
  {
    id: 'sway-back',
    places: ['back', 'waist'],
    seen: 'a level fold lies across the back just above the waist, deepest at center back',
    words: ['sway back', 'hollow back', 'back too long', 'sags at the waist', 'horizontal fold'],
    causes: [
      {
        cause: 'the back is too long at its center, for a hollow waist',
        pin: 'pin the fold out at center back, to nothing at the side seams',
        snippet: `- do: sway back
  by: 3/8 in`,
        costs: 'center back is shorter and its grain leans a little; the side seam keeps its length',
      },
    ],
    caution: STAND_EASY,
  },

  // Waist and side.

  {
    id: 'tight-waist',
    places: ['waist'],
    seen: 'lines run round the waist; the bodice rides up from it',
    words: ['tight', 'strained', 'breathing', 'singing', 'after a meal', 'hooks strain'],
    causes: [
      {
        cause: 'the waist is too small',
        pin: 'performer takes a full breath, then let the side seams out at the waist, to nothing at the underarm',
        snippet: `- do: let out
  seam: side seam
  by: 1/4 in
  taper to: underarm`,
        costs: 'the waist grows by four times the amount: two seams, front and back; skirt or peplum with it',
      },
      {
        cause: 'the waist darts take too much',
        pin: 'let the front waist darts out evenly at the waist',
        snippet: `- do: dart intake
  dart: waist dart
  of: front
  direction: less
  by: 1/8 in`,
        costs: 'less shape under the bust; skirt or peplum with it',
      },
    ],
    caution: `Check breath and voice before pinning tighter. ${STAND_EASY}`,
  },
  {
    id: 'loose-waist',
    places: ['waist'],
    seen: 'the waist is loose and stands away',
    words: ['too big', 'too wide', 'folds round the waist', 'hangs'],
    causes: [
      {
        cause: 'the waist is too large',
        pin: 'pin both side seams in at the waist, to nothing at the underarm, on a full breath',
        snippet: `- do: take in
  seam: side seam
  by: 1/8 in
  taper to: underarm`,
        costs: 'the waist shrinks by four times the amount; skirt or peplum with it',
      },
      {
        cause: 'the darts take too little',
        pin: 'pin the front waist darts deeper; then the back ones, if it is still loose',
        snippet: `- do: dart intake
  dart: waist dart
  of: front
  direction: more
  by: 1/8 in`,
        costs: 'more shape under the bust; skirt or peplum with it',
      },
    ],
    caution: `Check breath and voice before pinning tighter. ${CLEAR_OF_SKIN}`,
  },
  {
    id: 'waist-off-level',
    places: ['waist'],
    seen: 'the waist of the bodice lies above or below the waist of the body, all round',
    words: [
      'bodice too short',
      'bodice too long',
      'waist too high',
      'waist too low',
      'folds all round above the waist',
    ],
    causes: [
      {
        cause: 'the bodice is too short',
        pin: 'tie a tape round the waist of the body; measure down to it at center front, side and center back',
        snippet: `- do: lengthen
  part: bodice
  by: 1/2 in`,
        costs: 'both side seams and both centers grow alike; darts keep their intakes',
      },
      {
        cause: 'the bodice is too long',
        pin: 'tie a tape round the waist of the body; pin a level fold out all round above it',
        snippet: `- do: shorten
  part: bodice
  by: 1/2 in`,
        costs: 'both side seams and both centers shrink alike; darts keep their intakes',
      },
    ],
    caution: STAND_EASY,
  },
  {
    id: 'side-seam-swings',
    places: ['waist', 'front', 'back'],
    seen: 'the side seam swings to the front or to the back at the waist',
    words: ['side seam not straight', 'slants', 'twisting bodice', 'side seam crooked'],
    causes: [
      {
        cause: 'it swings forward: the front is too narrow at the waist, the back too wide',
        pin: 'chalk a plumb line from the underarm to the waist; let the front out and take the back in to it',
        snippet: `- do: let out
  seam: front side seam
  by: 1/4 in
  taper to: underarm
- do: take in
  seam: back side seam
  by: 1/4 in
  taper to: underarm`,
        costs: 'the waist keeps its girth',
      },
      {
        cause: 'it swings back: the back is too narrow at the waist, the front too wide',
        pin: 'chalk a plumb line from the underarm to the waist; let the back out and take the front in to it',
        snippet: `- do: let out
  seam: back side seam
  by: 1/4 in
  taper to: underarm
- do: take in
  seam: front side seam
  by: 1/4 in
  taper to: underarm`,
        costs: 'the waist keeps its girth',
      },
    ],
    caution: STAND_EASY,
  },
  {
    id: 'opening-does-not-meet',
    places: ['back', 'waist'],
    seen: 'the opening does not meet at center back',
    words: ['does not close', 'gap at the back', 'too small all over', 'hooks', 'zipper', 'fastening'],
    causes: [
      {
        cause: 'the bodice is too small round bust and waist',
        pin: 'let it close evenly from the neck down with pins across the gap; measure the gap at bust and waist',
        snippet: `- do: let out
  seam: side seam
  by: 1/4 in
- do: rematch cap`,
        costs:
          'bust and waist grow by four times the amount; the armscye is longer and the cap is drawn again to meet it',
      },
      {
        cause: 'the back alone is too narrow',
        pin: 'measure the gap at neck, blades and waist; half of it goes on each side',
        snippet: `- do: let out
  seam: center back
  by: 1/4 in`,
        costs: 'the back neckline is wider at its center: facing and collar with it',
      },
    ],
    caution: CLEAR_OF_SKIN,
  },
]
