import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"

/**
 * A calculated and a sampled sugar as one, mg/g: each counts by one over its squared error (mg/g, as a standard error).
 * An error of 0 means certain: that one alone counts. Refuses two that are certain and differ.
 */
export function weigh(
  model: number,
  modelError: number,
  sample: number,
  sampleError: number,
): number | Refusal {
  const larger = Math.max(modelError, sampleError)
  if (larger === 0)
    return model === sample
      ? model
      : outOfRange(`${model} and ${sample} mg/g are both given as certain, and differ`)
  // Over the larger of them, so that no square runs out of a double's range.
  const [doubt, noise] = [(modelError / larger) ** 2, (sampleError / larger) ** 2]
  return (model * noise + sample * doubt) / (doubt + noise)
}

const sugar = (label: string) => quantity(label, "mg/g", {min: 0, below: 1000})
const error = (label: string) => quantity(label, "mg/g", {min: 0})

export const ROOT_WEIGH = defineFunction({
  name: "ROOT.WEIGH",
  summary: "What the balance says and what a sample says, as one sugar",
  about:
    "The mean of both, each weighted by one over its squared standard error, which is the mean with the smallest error while both are " +
    "free of bias. The error of a sample is its standard error (the spread of its roots over the root of their number); that of the " +
    "balance is your judgement: about 40 mg/g half a year after the last sample (an assumption).",
  parameters: {
    model: sugar("Sugar by the balance"),
    modelError: error("Standard error of the balance"),
    sample: sugar("Sugar by the sample"),
    sampleError: error("Standard error of the sample"),
  },
  returns: {label: "Sugar in the root", unit: "mg/g"},
  refuses: ["two that are both certain and differ"],
  sources: ["nistHandbook", "planning"],
  example: {formula: "=ROOT.WEIGH(430,40,400,10)", gives: 401.76},
  calculate: ({model, modelError, sample, sampleError}) => weigh(model, modelError, sample, sampleError),
})
