import {describe, expect, it} from "vitest"
import {unlessUnreadable} from "../../../src/storage/book/limits"
import {readXml, xmlAttribute, xmlText} from "../../../src/storage/book/xml"

function told(xml: string | Uint8Array) {
  const found: string[] = []
  const bytes = typeof xml === "string" ? new TextEncoder().encode(xml) : xml
  const refused = unlessUnreadable(() => {
    readXml(bytes, {
      open: (name, attribute) => found.push(`<${name} ${attribute("a") ?? ""}`),
      close: (name) => found.push(`/${name}`),
      words: (text) => found.push(text),
    })
    return null
  })
  return refused ?? found
}

describe("readXml", () => {
  it("tells elements without their prefix, attributes and words in their order", () => {
    expect(told(`<?xml version="1.0"?><x:b a="1"><c a='2"'/>w<!-- <no> -->v<![CDATA[<&]]></x:b>`)).toEqual([
      "<b 1",
      '<c 2"',
      "/c",
      "w",
      "v",
      "<&",
      "/b",
    ])
  })

  it("knows an attribute from one whose name or value ends alike", () => {
    expect(told(`<b xa="1" c=" a='2'" a="3"/>`)).toEqual(["<b 3", "/b"])
  })

  it("reads the five entities of XML and characters by number, and leaves others as they stand", () => {
    expect(told("<b>&lt;&gt;&amp;&quot;&apos;&#228;&#xE4;&amp;lt;&other;&#x110000;</b>")).toEqual([
      "<b ",
      "<>&\"'ää&lt;&other;&#x110000;",
      "/b",
    ])
  })

  it("refuses a document type, which could bring entities that grow or point elsewhere", () => {
    const grows = `<!DOCTYPE b [<!ENTITY x "xxxxxxxx"><!ENTITY y "&x;&x;&x;">]><b>&y;</b>`
    expect(told(grows)).toEqual({refused: "It holds a document type, which a workbook has no use for"})
    expect(told(`<!DOCTYPE b SYSTEM "file:///etc/hosts"><b/>`)).toHaveProperty("refused")
  })

  it.each([
    ["<b><c></b></c>", "Its tags do not close in their order"],
    ["<b>", "Its text breaks off"],
    ["", "Its text breaks off"],
    ["words", "Its text breaks off"],
    ["<b><!-- x", "Its text breaks off"],
    ["<b a=1/>", "One of its tags cannot be read"],
    [`<b a="${"x".repeat(20_000)}"/>`, "One of its tags cannot be read"],
    ["<b>".repeat(101), "More than 100 of its elements lie within each other"],
  ])("refuses %.20s", (xml, refused) => expect(told(xml)).toEqual({refused}))

  it("reads UTF-16 by its mark and refuses letters that are neither", () => {
    const utf16 = new Uint8Array([0xff, 0xfe, ...[..."<ä/>"].flatMap((one) => [one.charCodeAt(0), 0])])
    expect(told(utf16)).toEqual(["<ä ", "/ä"])
    expect(told(new Uint8Array([0x3c, 0xe4, 0x2f, 0x3e]))).toEqual({
      refused: "Its letters are neither UTF-8 nor UTF-16",
    })
  })

  it("takes time by length alone on texts made to be slow", () => {
    for (const slow of [
      `<b ${" ".repeat(19_000)}`,
      `<b ${"a ".repeat(9000)}`,
      `<b${' a=""'.repeat(4500)}`,
      "<".repeat(1e6),
    ])
      expect(told(slow)).toHaveProperty("refused")
  })

  it("reads back any words it wrote", () => {
    const words = "a<b>&\"'\tc\nd ]]> &amp; é 🌱"
    expect(told(`<b a="${xmlAttribute(words)}">${xmlText(words)}</b>`)).toEqual([`<b ${words}`, words, "/b"])
  })
})
