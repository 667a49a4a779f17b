/**
 * For every function of the kernel that callers may use, the tests that prove its promise: file and name (`…` for what a
 * test's name has from its case). `promises.test.ts` checks that they exist and makes the table of
 * src/geometry/README.md out of them and the functions' own words.
 */
export const PROOFS: Readonly<Record<string, readonly string[]>> = {
  point: ['point: add, subtract, scale and mix coordinate by coordinate'],
  add: ['point: add, subtract, scale and mix coordinate by coordinate'],
  subtract: ['point: add, subtract, scale and mix coordinate by coordinate'],
  scale: ['point: add, subtract, scale and mix coordinate by coordinate'],
  along: ['point: add, subtract, scale and mix coordinate by coordinate'],
  between: ['point: add, subtract, scale and mix coordinate by coordinate'],
  dot: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  cross: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  magnitude: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  equalPoints: ['point: are equal to the last digit or not at all'],
  distance: ['point: add, subtract, scale and mix coordinate by coordinate'],
  unit: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  heading: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  angleOf: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  turnBetween: ['point: products are those of lengths and the angle between, anticlockwise positive'],
  leftOf: ['point: add, subtract, scale and mix coordinate by coordinate'],
  rightOf: ['point: add, subtract, scale and mix coordinate by coordinate'],
  rotateAbout: ['point: a turn keeps distances and turns every direction by its angle'],

  cubic: ['cubic: has the points and derivatives that bezier-js has'],
  line: ['cubic: a line is run through at even speed, and told from a straight cubic that is not'],
  isLine: ['cubic: a line is run through at even speed, and told from a straight cubic that is not'],
  pointAt: ['cubic: has the points and derivatives that bezier-js has'],
  derivativeAt: ['cubic: has the points and derivatives that bezier-js has'],
  secondDerivativeAt: ['cubic: has the points and derivatives that bezier-js has'],
  curvatureAt: ['cubic: bends as the circle through three near points does'],
  tangentAt: ['path-length: have a tangent at ends with coincident handles: the direction just inside'],
  reverseCubic: ['path-length: are run through the other way and moved with their points'],
  moveCubic: ['path-length: are run through the other way and moved with their points'],
  splitCubic: ['path-length: cut and put together again are the same curve'],
  subCubic: ['path-length: cut and put together again are the same curve'],

  curvatureExtrema: [
    'curvature-extrema: are where the curvature, sampled, stops rising or falling',
    'curvature-extrema: the vertex of a parabola, where the radius is 1 / 2a',
    'curvature-extrema: move and turn with their cubic',
  ],
  smallestRadius: [
    'curvature-extrema: the vertex of a parabola, where the radius is 1 / 2a',
    'curvature-extrema: no place of any cubic bends more than the smallest radius says',
  ],
  inflections: ['measuring: are where the curvature, sampled, changes sign'],
  curvatureChanges: ['measuring: counts changes inside cubics and at joints, but not the noise on straight pieces'],
  curvatureSigns: ['measuring: counts changes inside cubics and at joints, but not the noise on straight pieces'],
  roots: [
    'measuring: finds the roots a polynomial was made from',
    'measuring: counts a touch once, knows constants and lost leading terms',
  ],

  arcLength: [
    'arc-length: keeps every accuracy from 1 to 1e-9: …',
    'arc-length: keeps its accuracy on parabolas of any shape against their closed form',
    'arc-length: keeps its accuracy on straight lines that run back and forth',
    'arc-length: lies between the chord and the control polygon, adds up over a cut, ignores moves and direction',
    'arc-length: agrees with bezier-js and paper',
    'arc-length: throws on an accuracy that is not above zero and returns on coordinates that are not numbers',
  ],
  arcLengthBetween: [
    'arc-length: lies between the chord and the control polygon, adds up over a cut, ignores moves and direction',
  ],
  lengthBounds: [
    'arc-length: lies between the chord and the control polygon, adds up over a cut, ignores moves and direction',
  ],
  parameterAtLength: [
    'arc-length: comes back to the length it was given, cusps and backtracks included',
    'arc-length: finds its way through a cusp and gives the ends beyond the ends',
  ],
  splitCubicAtLength: ['arc-length: finds its way through a cusp and gives the ends beyond the ends'],

  polyline: ['cubic: are the points and cubics themselves; an empty path has none'],
  startOf: ['cubic: are the points and cubics themselves; an empty path has none'],
  endOf: ['cubic: are the points and cubics themselves; an empty path has none'],
  firstCubic: ['cubic: are the points and cubics themselves; an empty path has none'],
  lastCubic: ['cubic: are the points and cubics themselves; an empty path has none'],
  isClosed: ['cubic: close it where they are less than a millionth of a mm apart'],
  reversePath: ['path-length: lengths add up under cutting, reversing and taking parts'],
  movePath: ['measuring: keep lengths; mirrors turn an outline over, and reversed it is anticlockwise again'],
  pathLength: [
    'path-length: lengths add up under cutting, reversing and taking parts',
    'chromium: lengths of seams, outlines, cusps and hairpins are the same but for its single precision',
    'regressions: are measured to the accuracy asked',
  ],
  locate: [
    'path-length: a place found by length lies at that length',
    'path-length: a place off the path, or a cut at its end, is a mistake',
  ],
  pointAlong: ['path-length: a place found by length lies at that length'],
  directionAlong: ['path-length: a place found by length lies at that length'],
  subPath: [
    'path-length: lengths add up under cutting, reversing and taking parts',
    'path-length: untouched cubics stay the same objects',
  ],
  splitPath: [
    'path-length: lengths add up under cutting, reversing and taking parts',
    'path-length: a place off the path, or a cut at its end, is a mistake',
  ],
  pathUntil: ['path-length: cut at places by parameter: until, from and between make up the whole'],
  pathFrom: ['path-length: cut at places by parameter: until, from and between make up the whole'],
  pathBetween: ['path-length: cut at places by parameter: until, from and between make up the whole'],

  nearest: [
    'measuring: is no farther than the nearest of a thousand samples, and lies on the path where it says',
    'measuring: gives back the length along that a point of the path was taken at',
  ],
  nearestParameter: [
    'measuring: is no farther than the nearest of a thousand samples, and lies on the path where it says',
  ],
  nearestOnCubic: [
    'measuring: is no farther than the nearest of a thousand samples, and lies on the path where it says',
  ],
  alongOf: ['measuring: gives back the length along that a point of the path was taken at'],
  bounds: [
    'measuring: are as tight as dense sampling, and never tighter',
    'measuring: join, and hold a circle exactly',
  ],
  cubicBounds: ['measuring: are as tight as dense sampling, and never tighter'],
  joinBoxes: ['measuring: join, and hold a circle exactly'],
  boxesMeet: ['measuring: meet where they share a point, or miss each other by rounding'],
  area: [
    'measuring: is exact on polygons and parabolas',
    'measuring: agrees with the polygon through many points and ignores moves',
  ],
  contains: ['measuring: agrees with ray casting on the polygon through many points'],
  windingNumber: ['measuring: counts windings, and answers on the line itself too'],
  flatten: ['measuring: stays within the tolerance at every tolerance, measured from the curve'],

  crossings: [
    'crossings: are those that paper finds, for cubics that cross at an angle',
    'crossings: of random polygons are those of their sides, solved one by one',
    'crossings: a tangent touches once, a secant of a millionth crosses twice, a miss of a hundred-thousandth not at all',
    'crossings: common ends and ends on the other line are ends',
    'crossings: common stretches are overlaps, whole, in part, reversed, over joints and a ten-millionth apart',
    'regressions: an outline and itself, moved by nothing or nearly nothing, overlap along the whole line',
  ],
  selfCrossings: [
    'crossings: a loop in one cubic is found in closed form',
    'crossings: finds the crossings of a figure of eight and none on round outlines or their joints',
    'crossings: the crossings of two outlines laid on a common path agree with crossings',
    'crossings: is true only of neighbours that the search finds to meet at their joint alone',
  ],
  lineCrossings: [
    'crossings: finds what crossings finds with a long line, and lies on the line',
    'crossings: counts a joint on the line once and a stretch on it not at all',
  ],
  levelCrossings: [
    'crossings: are the crossings of the level line that change sides, in order',
    'crossings: a joint, a stretch and an end on the level count once, a touch from either side not',
  ],

  hobbySpline: [
    'hobby: matches the control points published in the MetaPost manual for its five-point curve',
    'hobby: gives each cubic the handles of the velocity function over the tension',
    'hobby: runs through its knots with continuous tangents and continuous mock curvature, open',
    'hobby: the same closed, also at the first knot',
    'hobby: keeps given directions, and they part the spline into independent runs',
    'hobby: throws on knots that lie on each other and on too few',
  ],
  fitCubic: [
    'fit-cubic: keeps its ends and directions, and every sample within the tolerance, nearly wherever it begins',
    'fit-cubic: finds the cubic that the samples were taken from, and none where there is none',
  ],
  refit: [
    'refit: keeps its promise on smooth curves at every tolerance, between the samples too',
    'refit: takes as few cubics as the known error of cubic arcs allows',
    'refit: keeps given end directions exactly and its promise on any smooth outline, moved anywhere',
    'refit: of gentle curves is gentle: no radius far below the smallest of the curve',
    'refit: scales with its samples',
    'refit: throws on what cannot be fitted',
  ],

  offset: [
    'offset: has its distance within the tolerance everywhere, whatever the tolerance',
    'offset: starts and ends exactly at point + distance · normal, on any cubic',
    'offset: is never farther than its distance, and leaves nothing out where it keeps it, on any cubic without a loop',
    'offset: a convex outline grows by Steiner: area A + L·d + π·d² for round ones',
    'offset: a parabola offset inward past its radius has its tip where the closed form says',
    'offset: has at every fraction of the length the distance of that fraction, along the normal',
    'regressions: …, by …',
  ],
  offsetOutline: [
    'offset-outline: agrees on smooth outlines with hollows',
    'offset-outline: agrees on outlines with corners, mitred and cut off, outer and inner',
    'offset-outline: is, for convex polygons, the intersection of the moved half-planes',
    'offset-outline: keeps every edge its own distance where no other edge is near, and never crosses',
    'offset-outline: takes tapered distances',
    'offset-outline: mirrored: folded along the hem, its sides lie on the sides of the allowance',
    'offset-outline: throws on fewer than two edges',
  ],

  mirrorX: ['measuring: keep lengths; mirrors turn an outline over, and reversed it is anticlockwise again'],
  mirrorPathX: ['measuring: keep lengths; mirrors turn an outline over, and reversed it is anticlockwise again'],
  mirrorAcross: ['measuring: mirror across any line, turn and shift in turn'],
  shift: ['measuring: mirror across any line, turn and shift in turn'],
  turn: ['measuring: mirror across any line, turn and shift in turn'],
  inTurn: ['measuring: mirror across any line, turn and shift in turn'],
  moveBeyond: [
    'slash: cuts an open path wherever it crosses, and leaves a path on one side alone or moves it whole',
    'slash: throws on a slash without direction and on an empty path',
  ],
  wedge: [
    'slash: opened about a point of an outline adds the triangle at its mouth, and its chord to the length',
    'slash: about a point inside opens on one side and laps by as much on the other',
  ],
  spread: [
    'slash: of an outline adds the slash times the amount to the area and twice the amount to the length',
    'slash: an edge on the slash stays with the right side; a start on the slash is joined too',
  ],
}

/** Modules that are only for the kernel itself: nothing outside src/geometry may import them. */
export const INNER: readonly string[] = [
  'cubic-crossings',
  'cubic-terms',
  'direction-cone',
  'folded-corner',
  'lies-on',
  'meet-at-joint',
  'meeting-kind',
  'offset-corner',
  'offset-cubic',
  'offset-fitter',
  'offset-probe',
  'sample-direction',
  'separation',
  'sign-changes',
  'smooth-parts',
  'trim-loops',
]

/** Functions in other modules that are only for the kernel itself. */
export const INNER_FUNCTIONS: readonly string[] = ['parameterWithin']
