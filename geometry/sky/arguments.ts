// Mean motions: the fundamental arguments of Moon and Sun, and the planets' mean longitudes, as straight lines in time.
// Time is universal time in days from noon on 1 January 2000, the same as dynamical time to a minute or so, which no
// pointer shows; arguments are turns.
// Source: IERS Conventions (2010), Technical Note 36, eq. 5.43 and 5.44 (rates as in check tables; the places at the epoch from
// memory); precession in longitude 5028.796195″ a century (IAU 2006).

/** Arcseconds at the epoch, and arcseconds a Julian century. */
const ARCSEC = {
  moonAnomaly: [485868.249036, 1717915923.2178],
  sunAnomaly: [1287104.79305, 129596581.0481],
  moonFromNode: [335779.526232, 1739527262.8478],
  elongation: [1072260.70369, 1602961601.209],
  node: [450160.398036, -6962890.5431],
} as const;

/** Radians at the epoch, and radians a Julian century, against the fixed equinox of 2000. */
const PLANETS = {
  Mercury: [4.402608842, 2608.7903141574],
  Venus: [3.176146697, 1021.3285546211],
  Earth: [1.753470314, 628.3075849991],
  Mars: [6.203480913, 334.06124267],
  Jupiter: [0.599546497, 52.9690962641],
  Saturn: [0.874016757, 21.329910496],
  Uranus: [5.481293872, 7.4781598567],
  Neptune: [5.311886287, 3.8133035638],
} as const;

export type Argument = keyof typeof ARCSEC;
export type PlanetName = keyof typeof PLANETS;
export const PLANET_NAMES = Object.keys(PLANETS) as readonly PlanetName[];

const CENTURY_DAYS = 36525, TURN_ARCSEC = 1296000, PRECESSION_ARCSEC = 5028.796195;

/** Turns at the epoch and turns a day: a quantity that goes evenly. */
export interface Even { readonly at: number; readonly perDay: number }

export const argument = (name: Argument): Even =>
  ({ at: ARCSEC[name][0] / TURN_ARCSEC, perDay: ARCSEC[name][1] / TURN_ARCSEC / CENTURY_DAYS });

/** Mean longitude on the moving ecliptic, from the equinox of date. */
export function planetLongitude(name: PlanetName): Even {
  const [at, perCentury] = PLANETS[name];
  return plus({ at: at / (2 * Math.PI), perDay: perCentury / (2 * Math.PI) / CENTURY_DAYS }, PRECESSION);
}

export const PRECESSION: Even = { at: 0, perDay: PRECESSION_ARCSEC / TURN_ARCSEC / CENTURY_DAYS };
/** Mean time, 0 at midnight: half a turn at the epoch, which is noon. */
export const DAY: Even = { at: 0.5, perDay: 1 };

export const times = (k: number, a: Even): Even => ({ at: k * a.at, perDay: k * a.perDay });
export const plus = (...some: readonly Even[]): Even =>
  some.reduce((a, b) => ({ at: a.at + b.at, perDay: a.perDay + b.perDay }), { at: 0, perDay: 0 });
export const shifted = (a: Even, turns: number): Even => ({ at: a.at + turns, perDay: a.perDay });

/** Moon's mean longitude, Sun's mean longitude, longitude of the Moon's perigee. */
export const MOON: Even = plus(argument("moonFromNode"), argument("node"));
export const SUN: Even = plus(MOON, times(-1, argument("elongation")));
export const PERIGEE: Even = plus(MOON, times(-1, argument("moonAnomaly")));
