import {quantity} from "../parameters"

/** Latitude of the field in degrees, south negative. */
export const latitudeOfField = quantity("Latitude (south negative)", "°", {min: -90, max: 90})
