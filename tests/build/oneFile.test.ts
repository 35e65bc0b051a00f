import {createHash} from "node:crypto"
import {readFileSync} from "node:fs"
import {createRequire} from "node:module"
import {expect, it} from "vitest"
import {latinAlone, pageOf, withinScript} from "../../src/build/oneFile"

const page = readFileSync(`${import.meta.dirname}/../../src/index.html`, "utf8")

it.each(["</script>", "</SCRIPT", "<script>", "<!--"])("keeps a script whole that says %s", (words) => {
  const code = `said = "${words}"`
  const written = withinScript(code)
  expect(written.toLowerCase()).not.toContain(words.toLowerCase())
  const said: unknown = new Function(`let said; ${written}; return said`)()
  expect(said).toBe(words)
})

it("names nothing that would have to be loaded", () => {
  const made = pageOf(page, {code: "go()", styles: "p{color:red}", licences: ""})
  const addresses = [...made.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, address]) => address!)
  expect(addresses.length).toBeGreaterThan(0) // the sign, as data
  expect(addresses.filter((address) => !address.startsWith("data:"))).toEqual([])
})

it("allows exactly the script that stands in it, whatever it holds", () => {
  const made = pageOf(page, {code: 'go("$& $1 </script>")', styles: "", licences: ""})
  const [, script] = /<script id="program">([^]*?)<\/script>/.exec(made)!
  expect(made).toContain(createHash("sha256").update(script!).digest("base64"))
  expect(script).toContain("$& $1")
})

it("hands the licences on without showing them", () => {
  const made = pageOf(page, {code: "", styles: "", licences: "MIT --> <b>shown</b>"})
  const comment = made.slice(made.indexOf("</html>"))
  expect(comment).toContain("MIT")
  expect(comment.indexOf("-->")).toBe(comment.lastIndexOf("-->"))
})

it("keeps the faces of a typeface for Latin letters", () => {
  const css = readFileSync(createRequire(import.meta.url).resolve("@fontsource-variable/literata"), "utf8")
  const files = [...latinAlone(css).matchAll(/files\/(\S+?)\.woff2/g)].map(([, file]) => file)
  expect(files.sort()).toEqual(["literata-latin-ext-wght-normal", "literata-latin-wght-normal"])
})
