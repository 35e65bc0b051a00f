import {readFile} from "node:fs/promises"
import type {Plugin} from "vite"
import {oneFilePolicy, withPolicy} from "./policy.ts"

/** Makes one page of what was built: the script and the styles stand in it, and nothing is left beside it. */
export function oneFile(name: string): Plugin {
  return {
    name: "one-file",
    enforce: "pre",
    resolveId(asked, from) {
      // The one file starts its workers in its own way.
      const isPlain = asked.endsWith("/startWorker") && !from?.includes("/oneFile/")
      return isPlain ? `${import.meta.dirname}/../oneFile/startWorker.ts` : null
    },
    transform: (code, id) => (/@fontsource-variable.*\.css$/.test(id) ? latinAlone(code) : null),
    generateBundle: {
      order: "post",
      async handler(_, bundle) {
        const built = Object.values(bundle)
        const scripts = built.flatMap((file) => (file.type === "chunk" ? [file.code] : []))
        const styles = built.flatMap((file) => (file.fileName.endsWith(".css") ? [file] : []))
        const others = built.filter((file) => file.type === "asset" && !file.fileName.endsWith(".css"))
        if (scripts.length !== 1 || others.length > 0)
          throw new Error(`More than one file: ${built.map(({fileName}) => fileName).join(", ")}`)
        for (const {fileName} of built) delete bundle[fileName]
        const page = await readFile(`${import.meta.dirname}/../index.html`, "utf8")
        const style = styles.map((file) => (file.type === "asset" ? String(file.source) : "")).join("\n")
        this.emitFile({type: "asset", fileName: name, source: pageOf(page, scripts[0]!, style)})
      },
    },
  }
}

/** The page with its script and its styles inside. */
export function pageOf(page: string, code: string, styles: string): string {
  const script = withinScript(code)
  return withPolicy(page, oneFilePolicy(script))
    .replace(/ *<link rel="(manifest|apple-touch-icon)".*\n/g, "")
    .replace("</head>", () => `<style>${styles.replaceAll("</", "<\\/")}</style>\n  </head>`)
    .replace(/<script type="module".*<\/script>/, () => `<script id="program">${script}</script>`)
}

/** The same program without what would end the script's element early (HTML, "Restrictions for contents of script elements"). */
export const withinScript = (code: string) => code.replace(/<(?=\/script|script|!--)/gi, "\\x3C").trim()

/** The faces of a typeface for Latin letters; others are shown in a typeface of the system. */
export const latinAlone = (css: string) =>
  css
    .split(/(?=\/\* )/)
    .filter((face) => /^\/\* \S+-latin(-ext)?-wght/.test(face))
    .join("")
