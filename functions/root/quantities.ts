import {date, quantity} from "../parameters"

/** Sugar, mg per g dry root. All of the root as sugar (1000) leaves none to hold it, so that is refused. */
export const sugarIn = (label: string) => quantity(label, "mg/g", {min: 0, below: 1000})

export const sugarInRoot = sugarIn("Sugar in the root")

export const structuralRoot = quantity("Structural root (dry root without its sugar)", "kg/ha", {min: 0})

export const storedSugar = quantity("Sugar in the store", "kg/ha", {min: 0})

export const dryRoot = quantity("Dry root of a plant", "g/plant", {min: 0})

export const plantsOnAHectare = quantity("Plants per hectare", "per ha", {min: 0})

export const spearsSold = quantity("Saleable spears", "kg/ha", {min: 0})

export const soilTemperature = quantity("Mean soil temperature at crown depth", "°C", {min: -20, max: 50})

export const daysOfUpkeep = quantity("Days", "days", {min: 0})

/** Two-sided confidence. Above 0.9999 a sample of roots promises nothing more (chosen). */
export const confidenceShare = quantity("Confidence", "share", {above: 0, max: 0.9999})

/** Structural root of a field that the balance can run on: some root there must be. */
export const rootsOfAField = quantity(structuralRoot.label, "kg/ha", {above: 0})

export const openingOfCutting = date("Opening")

export const closeOfCutting = date("Close")
