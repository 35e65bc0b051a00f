import type {FormulaFunction} from "./define"
import {SPEAR_HEAT} from "./spear/heat"

/** Every formula function, in help order. A function is published by its line here. */
export const catalogue: readonly FormulaFunction[] = [SPEAR_HEAT]
