/** What another program needs to use the formula functions in an engine of its own. */
export {catalogue} from "./catalogue"
export type {Described, FormulaFunction, Result} from "./define"
export type {Parameter} from "./parameters"
export {registerCatalogue} from "./plugin"
export type {Unit} from "./quantity"
export type {Refusal} from "./refusal"
export {standardFunctions} from "./standard/catalogue"
export {registerStandardFunctions} from "./standardPlugin"
