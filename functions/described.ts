import {catalogue} from "./catalogue"
import type {Described} from "./define"
import {sources, type Source} from "./sources"
import {standardFunctions} from "./standard/catalogue"

/** Every function that can be explained: ours, then those of the standard that are added to the engine's. */
export const described: readonly Described[] = [...catalogue, ...standardFunctions]

/** The works a function rests on, for a function of a standard with the section. */
export const worksOf = ({sources: cited, section}: Described): readonly Source[] =>
  cited.map((key) => {
    const {work, tag} = sources[key]
    return {work: section === undefined ? work : `${work}; section ${section}`, tag}
  })

/** Which parameter the argument is for, both counted from 0; null when there are too many arguments. */
export function parameterFor(
  parameters: Readonly<Record<string, {readonly repeats?: true}>>,
  argument: number,
): number | null {
  const all = Object.values(parameters)
  if (argument < all.length) return argument
  const once = all.filter(({repeats}) => !repeats).length
  return once === all.length ? null : once + ((argument - once) % (all.length - once))
}
