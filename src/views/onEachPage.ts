/** The style by which words stand at the foot of each printed page: the plan's on the left, the print's before its number. */
export const onEachPage = (plan: string, print: string) =>
  `@page { @bottom-left { content: ${quoted(plan)} } @bottom-right { content: ${quoted(`${print}. Page `)} counter(page) " of " counter(pages) } }`

/** Quotes would end the words. */
const quoted = (words: string) => JSON.stringify(words.replace(/[<>\\"\n]/g, " "))
