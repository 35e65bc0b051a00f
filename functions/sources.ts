/** How far a fact can be trusted, as shown beside it. */
export type Tag =
  | "looked up" // seen in the work named
  | "second-hand" // seen in a page that quotes the work named
  | "memory" // from memory, not checked
  | "common practice" // no source
  | "derived" // worked out from tagged numbers
  | "assumption" // a planning value without a source: calibrate it
  | "chosen" // a decision of this project, with its reason

export interface Source {
  /** Author, year, title, publisher; for a rule of our own, what it is. */
  readonly work: string
  readonly tag: Tag
}

/** Every published work and every rule of our own that the calculations rest on, by key. */
export const sources = {
  balance: {
    work:
      "Reserve balance of this planner: mass balance of structural root and stored sugar, kg/ha; " +
      "calibrated on published trials, see the help of each function",
    tag: "derived",
  },
  identity: {work: "Follows from the meaning of its terms by arithmetic", tag: "derived"},
  planning: {
    work: "Planning rule of this planner, chosen for plainness; every number in it is yours to change",
    tag: "chosen",
  },
  practice: {work: "Common practice among growers; no single source", tag: "common practice"},
  mcmaster1997: {
    work:
      "McMaster, G.S., Wilhelm, W.W. (1997). Growing degree-days: one equation, two interpretations. " +
      "Agricultural and Forest Meteorology 87, 291-300. Elsevier",
    tag: "looked up",
  },
  cfr761: {
    work:
      "Code of Federal Regulations, title 7, section 761.104: development of the farm operating plan. " +
      "U.S. Department of Agriculture, Farm Service Agency",
    tag: "looked up",
  },
  cfr1437: {
    work:
      "Code of Federal Regulations, title 7, section 1437.102: yield determinations. " +
      "U.S. Department of Agriculture, Farm Service Agency",
    tag: "looked up",
  },
  buhlmann1967: {
    work: "Bühlmann, H. (1967). Experience rating and credibility. ASTIN Bulletin 4, 199-207",
    tag: "memory",
  },
  clinton: {
    work:
      "Gilsanz, J.C. and others (year not found). Long-term effects of rows per bed and in-row spacing on yield " +
      "and spear size of asparagus. Trial at Clinton, North Carolina",
    tag: "looked up",
  },
  bussell1997: {
    work: "Bussell, W.T. and others (1997). New Zealand Journal of Crop and Horticultural Science 25, 359-368",
    tag: "looked up",
  },
} as const satisfies Record<string, Source>

export type SourceKey = keyof typeof sources
