import {differenceText, percentText} from "../../editor/display"
import {ASSUMED_RISK} from "../../studies/lenderRisk"
import type {Region} from "../../workbook/document"

const {airSpread, sunSpread, yearSpread, fieldSpread, doubt, priceVariation} = ASSUMED_RISK

/** How far the air of a year strays from the usual: "1 °C", "1.8 °F". */
export const warmthAssumed = (region: Region) =>
  differenceText(airSpread, {heading: "Air", kind: "typed", unit: "°C"}, region)

/** How far the weather of drawn years strays, in words. */
export const weatherAssumed = (region: Region) =>
  `${warmthAssumed(region)} warmer or colder and ${percentText(sunSpread)} more or less sun about the usual`

/** What else is drawn, as a sentence. */
export const SPREADS_ASSUMED =
  `Assumed, not measured here, besides: yields of a year ${percentText(yearSpread)} alike on all fields and ` +
  `${percentText(fieldSpread)} on each, what is expected of a field ${percentText(doubt)} for all years, the price ` +
  `${percentText(priceVariation)}, lower in a full year.`
