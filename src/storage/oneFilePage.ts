/** Where the planner as one file lies beside the planner that is served. */
const BESIDE = "fernledger.html"

/** The planner as one file, in text: this page itself where it is one, else the file that is served. Null where it is not at hand. */
export async function oneFilePage(): Promise<string | null> {
  const {document} = window
  const program = document.getElementById("program")
  if (program) return asItCame(program)
  try {
    const answer = await fetch(new URL(BESIDE, document.baseURI))
    const text = answer.ok ? await answer.text() : ""
    return text.includes('<script id="program">') ? text : null
  } catch {
    return null // no network, and not kept for one
  }
}

/** The page as it was loaded: its head up to the styles that it came with, an empty place for the planner, and the program. */
function asItCame(program: HTMLElement): string {
  const {document} = window
  const children = [...document.head.children]
  const styles = children.findIndex(({tagName}) => tagName === "STYLE")
  const head = children.slice(0, styles + 1).map(({outerHTML}) => outerHTML)
  const licences = [...document.childNodes, ...document.body.childNodes].flatMap((one) =>
    one instanceof Comment ? [`<!--${one.data}-->`] : [],
  )
  const noScript = document.querySelector("noscript")?.outerHTML ?? ""
  return `<!doctype html>
<html lang="en">
  <head>
    ${head.join("\n    ")}
  </head>
  <body>
    <div id="planner"></div>
    ${noScript}
    <script id="program">${program.textContent}</script>
  </body>
</html>
${licences.join("\n")}
`
}
