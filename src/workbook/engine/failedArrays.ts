import {HyperFormula} from "hyperformula"
import {insidesOf} from "./insides"

/**
 * A formula over the very cells that another would fill, and failed, as in a ring, is given the error of each cell. The engine
 * (3.5.0) throws "Unknown array" instead, so that the formula could not be typed. Calling it twice does no harm.
 */
export function takeFailedArrays() {
  // The class is not public: an engine leads to it.
  const engine = HyperFormula.buildEmpty({licenseKey: "gpl-v3"})
  const {_dependencyGraph: dependencies} = insidesOf(engine)
  if (dependencies?.getArray) {
    const shared: typeof dependencies = Object.getPrototypeOf(dependencies)
    const {getArray} = shared
    shared.getArray = function (range) {
      const found = getArray?.call(this, range)
      return found?.array && "error" in found.array ? undefined : found
    }
  }
  engine.destroy()
}
