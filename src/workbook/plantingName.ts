import type {Content} from "./document"

/** A name as formulas look it up, without regard to capitals; "" where there are no words. */
export const soughtAs = (name: Content | undefined): string =>
  typeof name === "string" ? name.toLowerCase() : ""

/** Whether two names are of one planting. */
export const isSameName = (one: string, other: string): boolean => soughtAs(one) === soughtAs(other)
