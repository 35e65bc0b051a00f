import {expect, it} from "vitest"
import {openPlanner} from "./page"

it("opens the planner at the asked size and in the asked colours", async () => {
  const {page} = await openPlanner({width: 600, height: 700, colorScheme: "dark"})
  expect(page.viewportSize()).toEqual({width: 600, height: 700})
  expect(await page.evaluate(() => matchMedia("(prefers-color-scheme: dark)").matches)).toBe(true)
  expect(await page.title()).toContain("Fernledger")
})

it("starts every test with nothing stored", async () => {
  const first = await openPlanner()
  await first.page.evaluate(() => localStorage.setItem("left", "behind"))
  const second = await openPlanner()
  expect(await second.page.evaluate(() => localStorage.getItem("left"))).toBeNull()
})

it("notices errors, failed requests and requests to another host", async () => {
  // The page's own policy would stop what goes to another host before it could be noticed.
  const {page, trouble} = await openPlanner({browser: {bypassCSP: true}})
  expect(trouble).toEqual([])
  await page.evaluate(() => {
    console.error("spilt")
    setTimeout(() => {
      throw new Error("dropped")
    })
    void fetch("missing.json")
    fetch("https://elsewhere.invalid/").catch(() => {})
    void new WebSocket("wss://socket.invalid/")
  })
  for (const line of [
    /^console: spilt$/,
    /^uncaught: dropped$/,
    /^failed: .*\/missing\.json 404$/,
    /^to another host: https:\/\/elsewhere\.invalid\/$/,
    /^to another host: wss:\/\/socket\.invalid\/$/,
  ])
    await expect.poll(() => trouble).toContainEqual(expect.stringMatching(line))
})

it("runs no script but its own files, and reaches no other host", async () => {
  const {page} = await openPlanner()
  const broken = await page.evaluate(async () => {
    const broken: string[] = []
    document.addEventListener("securitypolicyviolation", ({effectiveDirective}) =>
      broken.push(effectiveDirective),
    )
    document.body.append(Object.assign(document.createElement("script"), {textContent: "window.ran = 1"}))
    document.body.insertAdjacentHTML("beforeend", "<img src='data:,' onerror='window.ran = 2'>")
    await fetch("https://elsewhere.invalid/").catch(() => {})
    await new Promise((wait) => setTimeout(wait, 300))
    return [...broken, "ran" in window]
  })
  expect(broken).toEqual(expect.arrayContaining(["script-src-elem", "script-src-attr", "connect-src", false]))
})
