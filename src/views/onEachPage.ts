/** The style by which words stand at the foot of each printed page. Quotes would end the words. */
export const onEachPage = (words: string) =>
  `@page { @bottom-left { content: ${JSON.stringify(words.replace(/[<>\\"\n]/g, " "))} } }`
