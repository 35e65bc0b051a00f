import {dayOfYear} from "../calendar"

/** Where the sun goes on one day as seen from one latitude; angles in radians. */
export interface SunPath {
  /** Latitude φ, south negative. */
  readonly latitude: number
  /** Declination δ of the sun. */
  readonly declination: number
  /** Hour angle ωs of sunset: 0 where the sun does not rise that day, π where it does not set. */
  readonly sunset: number
  /** Relative distance from earth to sun, turned over and squared: dr. */
  readonly nearness: number
}

/**
 * Path of the sun by equations 22 to 25 of Allen et al. (1998, FAO-56): from the number of the day in its year and the
 * latitude in degrees. Beyond the polar circles the hour angle of sunset is held at 0 or π.
 */
export function sunPath(degrees: number, day: number): SunPath {
  const year = (2 * Math.PI * dayOfYear(day)) / 365
  const phi = (Math.PI / 180) * degrees // eq. 22
  const dr = 1 + 0.033 * Math.cos(year) // eq. 23
  const delta = 0.409 * Math.sin(year - 1.39) // eq. 24
  const cosine = -Math.tan(phi) * Math.tan(delta) // eq. 25
  const sunset = Math.acos(Math.min(1, Math.max(-1, cosine)))
  return {latitude: phi, declination: delta, sunset, nearness: dr}
}
