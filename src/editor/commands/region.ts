import type {Region} from "../../workbook/document"
import {regionOf} from "../../workbook/region"
import type {Command} from "../store"

type RegionChange = {readonly [K in keyof Region]: Region[K] | undefined}

/** Says anew how numbers and dates are typed and shown; `undefined` is the plain way. Nothing that is stored changes. */
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
