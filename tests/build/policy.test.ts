import {createHash} from "node:crypto"
import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {oneFilePolicy, servedPolicy, withPolicy} from "../../src/build/policy"

const directive = (policy: string, name: string) =>
  policy
    .split("; ")
    .find((one) => one.startsWith(`${name} `))
    ?.slice(name.length + 1)

// Content Security Policy Level 3 (W3C), 2.3.1: the source list of the hash of an inline script, and 8.1 for its use.
it("lets the one file run a script of this text alone", () => {
  const hash = createHash("sha256").update("go()").digest("base64")
  expect(directive(oneFilePolicy("go()"), "script-src")).toBe(`'sha256-${hash}'`)
  expect(directive(oneFilePolicy("go()"), "connect-src")).toBe("'none'")
})

it("lets the served planner load its own files alone", () => {
  expect(directive(servedPolicy(), "script-src")).toBe("'self'")
  expect(directive(servedPolicy(), "worker-src")).toBe("'self'")
  expect(directive(servedPolicy(), "connect-src")).toBe("'self'")
})

it.each([servedPolicy(), oneFilePolicy("go()")])("closes what is not named, in %s", (policy) => {
  expect(directive(policy, "default-src")).toBe("'none'")
  expect(directive(policy, "base-uri")).toBe("'none'")
  expect(directive(policy, "form-action")).toBe("'none'")
  expect(policy).not.toMatch(/unsafe-eval|https?:|\*/)
})

it("stands in the planner's page before anything that loads", () => {
  const page = withPolicy(
    readFileSync(`${import.meta.dirname}/../../src/index.html`, "utf8"),
    "default-src 'none'",
  )
  const place = page.indexOf("Content-Security-Policy")
  expect(place).toBeGreaterThan(0)
  expect(place).toBeLessThan(page.search(/<(link|script|style)/))
})
