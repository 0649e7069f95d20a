// What a display may stand for: each quantity with its mean motion and, where it goes unevenly, its true place in turns.
// True places are those of astronomy-engine; mean ones the straight lines of the fundamental arguments. Universal time in days
// from noon on 1 January 2000; 0 of a turn is new Moon, the equinox, midnight, the start of Sunday or of the year.
import {
  Body, EclipticGeoMoon, Equator, GeoVector, HelioVector, MakeTime, MoonPhase, Observer, RotateVector, Rotation_EQJ_ECT,
  SiderealTime, SphereFromVector, SunPosition, type Vector,
} from "astronomy-engine";
import { argument, DAY, MOON, PERIGEE, PLANET_NAMES, planetLongitude, plus, PRECESSION, shifted, SUN, times, type Even, type PlanetName } from "./arguments.ts";
import { calendarTurns } from "./calendar.ts";

export interface Quantity {
  /** As it is written in a display's `shows`. */
  readonly name: string;
  readonly mean: Even;
  /** True turns at a time, modulo 1; absent: the mean is all there is. */
  readonly turns?: (day: number) => number;
  /** The dial's 0 is the maker's own, so only the motion can be compared. */
  readonly ownZero?: boolean;
  /** What its true motion swings with, the argument of that swing, and the days over which the swing is smoothed away. */
  readonly swing?: { readonly says: string; readonly anomaly: Even; readonly days: number };
}

/** Every quantity there is, by its name. */
export const QUANTITIES: readonly Quantity[] = [...timeAndDate(), ...moonAndSun(), ...tides(), ...planets()];

/** The quantity that `shows` names, or null where it is none of them. Case and spaces do not matter; some older names are known. */
export function quantityOf(shows: string | undefined): Quantity | null {
  if (shows === undefined) return null;
  const plain = shows.trim().toLowerCase().replace(/\s+/g, " ").replace(/[’`]/g, "'");
  const name = ALIASES[plain] ?? plain;
  return QUANTITIES.find((q) => q.name.toLowerCase() === name) ?? null;
}

/** Turns at a time, in [0, 1). */
export function turnsAt(quantity: Quantity, day: number): number {
  const turns = quantity.turns === undefined ? meanAt(quantity, day) : quantity.turns(day);
  return turns - Math.floor(turns);
}

/** Turns on the mean, not reduced. */
export const meanAt = ({ mean }: Quantity, day: number): number => mean.at + mean.perDay * day;

/** Mean days for one turn, always above 0; Infinity for what stands on the mean. */
export const meanDays = ({ mean }: Quantity): number => (mean.perDay === 0 ? Infinity : Math.abs(1 / mean.perDay));

/** Minutes by which true solar time is before mean: the equation of time. */
export function equationOfTimeMin(day: number): number {
  const time = MakeTime(day);
  const { ra } = Equator(Body.Sun, time, CENTRE, true, true);
  // The Sun's hour angle is true solar time from noon; the epoch, too, is noon.
  const hours = SiderealTime(time) - ra - 24 * (day - Math.floor(day));
  return 60 * (hours - 24 * Math.round(hours / 24));
}

const CENTRE = new Observer(0, 0, 0);
const ALIASES: Readonly<Record<string, string>> = {
  "moon's age": "age of the moon", "the moon's age": "age of the moon", "synodic month": "mean age of the moon",
  "moon's longitude": "longitude of the moon", "sun's longitude": "longitude of the sun", "zodiac": "longitude of the sun",
  "moon's node": "node of the moon", "moon's apse": "apse of the moon", "date": "calendar", "day of the week": "weekday",
  "high water, twice round in one age of the moon": "spring and neap", "mean solar time": "mean time",
};

function timeAndDate(): Quantity[] {
  return [
    { name: "mean time", mean: DAY },
    { name: "mean time, twelve hours", mean: times(2, DAY) },
    { name: "weekday", mean: { at: 6.5 / 7, perDay: 1 / 7 } }, // 1 January 2000 was a Saturday
    { name: "calendar", mean: { at: 0.5 / 366, perDay: 1 / 365.2425 }, turns: calendarTurns, swing: { says: "leap days", anomaly: { at: 0, perDay: 1 / 1461 }, days: 1461 } },
    { name: "sidereal time", mean: shifted(plus(DAY, SUN), 0.5), turns: (day) => SiderealTime(MakeTime(day)) / 24 },
    {
      name: "equation of time", mean: { at: 0, perDay: 0 }, turns: (day) => equationOfTimeMin(day) / 60,
      swing: { says: "the Sun’s uneven motion", anomaly: SUN, days: 365.2422 },
    },
  ];
}

function moonAndSun(): Quantity[] {
  const monthly = { says: "the Moon’s uneven motion", anomaly: argument("moonAnomaly"), days: Math.abs(1 / argument("moonAnomaly").perDay) };
  const yearly = { says: "the Sun’s uneven motion", anomaly: argument("sunAnomaly"), days: Math.abs(1 / argument("sunAnomaly").perDay) };
  const moon = (day: number) => EclipticGeoMoon(MakeTime(day)).lon / 360;
  const sun = (day: number) => SunPosition(MakeTime(day)).elon / 360;
  const own = (name: string, mean: Even): Quantity => ({ name, mean, ownZero: true });
  return [
    { name: "age of the Moon", mean: argument("elongation"), turns: (day) => MoonPhase(MakeTime(day)) / 360, swing: monthly },
    { name: "mean age of the Moon", mean: argument("elongation") },
    { name: "longitude of the Moon", mean: MOON, turns: moon, swing: monthly },
    { name: "mean longitude of the Moon", mean: MOON },
    { name: "Moon among the stars", mean: plus(MOON, times(-1, PRECESSION)), turns: (day) => moon(day) - PRECESSION.perDay * day, swing: monthly },
    { name: "node of the Moon", mean: argument("node") },
    { name: "Moon from its node", mean: argument("moonFromNode"), turns: (day) => moon(day) - argument("node").at - argument("node").perDay * day, swing: monthly },
    { name: "apse of the Moon", mean: PERIGEE },
    { name: "anomaly of the Moon", mean: argument("moonAnomaly") },
    { name: "longitude of the Sun", mean: SUN, turns: sun, swing: yearly },
    { name: "mean longitude of the Sun", mean: SUN },
    own("tropical year", SUN), own("sidereal year", plus(SUN, times(-1, PRECESSION))), own("anomalistic year", argument("sunAnomaly")),
    own("tropical month", MOON), own("sidereal month", plus(MOON, times(-1, PRECESSION))),
    own("draconic month", argument("moonFromNode")), own("anomalistic month", argument("moonAnomaly")),
    own("spring and neap", times(2, argument("elongation"))),
    own("lunar day", plus(DAY, times(-1, argument("elongation")))),
  ];
}

/** Equilibrium arguments at Greenwich. Source: Schureman, Manual of Harmonic Analysis, SP 98 (from memory); T from noon. */
function tides(): Quantity[] {
  const T = shifted(DAY, 0.5), s = MOON, h = SUN, p = PERIGEE;
  const made = (name: string, mean: Even): Quantity => ({ name: `tide ${name}`, mean });
  return [
    made("M2", times(2, plus(T, times(-1, s), h))), made("S2", times(2, T)), made("N2", plus(times(2, T), times(-3, s), times(2, h), p)),
    made("K2", times(2, plus(T, h))), made("K1", shifted(plus(T, h), -0.25)), made("O1", shifted(plus(T, times(-2, s), h), 0.25)),
    made("P1", shifted(plus(T, times(-1, h)), 0.25)), made("Q1", shifted(plus(T, times(-3, s), h, p), 0.25)),
    made("Mf", times(2, s)), made("Mm", plus(s, times(-1, p))), made("MSf", times(2, plus(s, times(-1, h)))),
    made("Ssa", times(2, h)), made("Sa", h), made("M4", times(4, plus(T, times(-1, s), h))),
  ];
}

function planets(): Quantity[] {
  return PLANET_NAMES.flatMap((name): Quantity[] => {
    const mean = planetLongitude(name);
    const swing = { says: `the uneven motion of ${name}`, anomaly: mean, days: Math.abs(1 / mean.perDay) };
    const round: Quantity = { name: `longitude of ${name}`, mean, swing, turns: (day) => ofDate(HelioVector(bodyOf(name), MakeTime(day))) };
    const means: Quantity = { name: `mean longitude of ${name}`, mean };
    if (name === "Earth") return [means, round];
    // Seen from the Earth a planet within our path goes round with the Sun on the mean.
    const inner = name === "Mercury" || name === "Venus";
    const seen = inner ? SUN : mean;
    return [means, round, {
      name: `${name} seen from the Earth`, mean: seen, turns: (day) => ofDate(GeoVector(bodyOf(name), MakeTime(day), true)),
      swing: { says: `the loops of ${name}`, anomaly: plus(mean, times(-1, SUN)), days: Math.abs(1 / (mean.perDay - SUN.perDay)) },
    }];
  });
}

const bodyOf = (name: PlanetName): Body => Body[name];

/** Longitude on the true ecliptic of date, turns, of a vector against the fixed equator. */
const ofDate = (vector: Vector): number => SphereFromVector(RotateVector(Rotation_EQJ_ECT(vector.t), vector)).lon / 360;
