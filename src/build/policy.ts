import {createHash} from "node:crypto"
import type {Plugin} from "vite"

/**
 * What each form of the page may load and run, by Content Security Policy Level 3 (W3C). Nothing goes to another
 * host, no text is run as a program, and no form is sent. Styles alone are looser: the grid writes its own into the
 * page, and they come without a mark that could be named here.
 */
const SHARED = {
  "default-src": "'none'",
  "style-src": "'self' 'unsafe-inline'",
  "base-uri": "'none'",
  "form-action": "'none'",
}

/** The policy of the planner that a server hands out: everything comes from its own place. */
export const servedPolicy = () =>
  policy({
    ...SHARED,
    "script-src": "'self'",
    "worker-src": "'self'",
    "img-src": "'self' data:",
    "font-src": "'self'",
    "manifest-src": "'self'",
    "connect-src": "'self'",
  })

/** The policy of the one file: of scripts it runs this one alone, in the page and in workers. */
export const oneFilePolicy = (script: string) =>
  policy({
    ...SHARED,
    "style-src": "'unsafe-inline'",
    "script-src": `'sha256-${createHash("sha256").update(script).digest("base64")}'`,
    "worker-src": "blob:",
    "img-src": "data:",
    "font-src": "data:",
    "connect-src": "'none'",
  })

const policy = (directives: Readonly<Record<string, string>>) =>
  Object.entries(directives)
    .map((directive) => directive.join(" "))
    .join("; ")

/** Puts a policy at the head of a page, before anything that it governs. */
export const withPolicy = (page: string, content: string) =>
  page.replace(/(<meta charset="utf-8" \/>)/, (first) => {
    return `${first}\n    <meta http-equiv="Content-Security-Policy" content="${content}" />`
  })

/** Puts the policy into the page that is served. Not while developing: the page then changes itself as files change. */
export const servedWithPolicy = (): Plugin => ({
  name: "policy",
  apply: "build",
  transformIndexHtml: {order: "post", handler: (page) => withPolicy(page, servedPolicy())},
})
