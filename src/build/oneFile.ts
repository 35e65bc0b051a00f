import {existsSync} from "node:fs"
import {copyFile, readFile} from "node:fs/promises"
import type {Plugin} from "vite"
import {oneFilePolicy, withPolicy} from "./policy.ts"

/**
 * Makes one page of what was built: the script and the styles stand in it, and nothing is left beside it. A copy goes into the
 * folder of the planner that is served, which hands it on with a workbook inside.
 */
export function oneFile(name: string, served: string): Plugin {
  return {
    name: "one-file",
    enforce: "pre",
    // The one file starts its workers in its own way.
    resolveId: (asked) =>
      asked.endsWith("/startWorker") ? `${import.meta.dirname}/../oneFile/startWorker.ts` : null,
    transform: (code, id) => (/@fontsource-variable.*\.css$/.test(id) ? latinAlone(code) : null),
    async writeBundle({dir}) {
      if (existsSync(served)) await copyFile(`${dir}/${name}`, `${served}/${name}`)
    },
    generateBundle: {
      order: "post",
      async handler(_, bundle) {
        const built = Object.values(bundle)
        const text = (kind: RegExp) =>
          built
            .filter(({fileName}) => kind.test(fileName))
            .map((file) => (file.type === "chunk" ? file.code : String(file.source)))
        const [scripts, styles, licences] = [text(/\.js$/), text(/\.css$/), text(/\.md$/)]
        if (scripts.length !== 1 || 1 + styles.length + licences.length < built.length)
          throw new Error(`More than one file: ${built.map(({fileName}) => fileName).join(", ")}`)
        for (const {fileName} of built) delete bundle[fileName]
        const page = await readFile(`${import.meta.dirname}/../index.html`, "utf8")
        const source = pageOf(page, {
          code: scripts[0]!,
          styles: styles.join("\n"),
          licences: licences.join("\n"),
        })
        this.emitFile({type: "asset", fileName: name, source})
      },
    },
  }
}

interface Parts {
  readonly code: string
  readonly styles: string
  /** Of the packages that are in the code: they ask to be handed on with it. */
  readonly licences: string
}

/** The page with its script and its styles inside, and the licences in a comment at its end. */
export function pageOf(page: string, {code, styles, licences}: Parts): string {
  const script = withinScript(code)
  return withPolicy(page, oneFilePolicy(script))
    .replace(/ *<link rel="(manifest|apple-touch-icon)".*\n/g, "")
    .replace("</head>", () => `<style>${styles.replaceAll("</", "<\\/")}</style>\n  </head>`)
    .replace(/<script type="module".*<\/script>/, () => `<script id="program">${script}</script>`)
    .concat(`<!--\n${licences.replaceAll("--", "- -")}\n-->\n`)
}

/** The same program without what would end the script's element early (HTML, "Restrictions for contents of script elements"). */
export const withinScript = (code: string) => code.replace(/<(?=\/script|script|!--)/gi, "\\x3C").trim()

/** The faces of a typeface for Latin letters; others are shown in a typeface of the system. */
export const latinAlone = (css: string) =>
  css
    .split(/(?=\/\* )/)
    .filter((face) => /^\/\* \S+-latin(-ext)?-wght/.test(face))
    .join("")
