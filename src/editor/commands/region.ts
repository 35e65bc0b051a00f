import type {Region} from "../../workbook/document"
import {regionOf} from "../../workbook/region"
import type {Command} from "../store"

/** What is said anew of a region; `undefined` is the plain way. */
export type RegionChange = {readonly [K in keyof Region]: Region[K] | undefined}

/** Says anew how numbers and dates are typed and shown. Nothing that is stored changes. */
export const changeRegion =
  (change: RegionChange): Command =>
  ({document}) => {
    const was = regionOf(document)
    const region = Object.fromEntries(
      Object.entries({...was, ...change}).filter(([, value]) => value !== undefined),
    ) as Region
    const keys = Object.keys(change) as (keyof Region)[]
    return keys.every((key) => region[key] === was[key]) ? null : {type: "setRegion", region}
  }
