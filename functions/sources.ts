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
    work: "Code of Federal Regulations (United States), title 7, section 761.104: yields in farm loan plans, own last three years first",
    tag: "looked up",
  },
  cfr1437: {
    work: "Code of Federal Regulations (United States), title 7, section 1437.102: mean of five crop years without the ends",
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
  krarup2002: {
    work:
      "Krarup, C., Contreras, S. (2002, year from memory). Elongation and branching of asparagus spears during a " +
      "spring harvest. Chilean Journal of Agricultural Research; abstract read",
    tag: "looked up",
  },
  ku2008: {
    work: "Ku, Y.G., Woolley, D.J., Nichols, M.A. (2008). Acta Horticulturae 776, 445-452; abstract read",
    tag: "looked up",
  },
  heissner2006: {
    work:
      "Heißner, A., Schmidt, S., Schonhof, I., Feller, C., Schreiner, M. (2006). Spear yield and quality of white " +
      "asparagus as affected by soil temperature. European Journal of Agronomy 25, 336-344; abstract read",
    tag: "looked up",
  },
  michiganBoard: {
    work: "Michigan Asparagus Advisory Board, tips page (year not shown): 20 million lb from 500 million spears",
    tag: "looked up",
  },
  times2017: {
    work: "The Times, London, 19 April 2017 (summary): 6 500 t from 340 million spears",
    tag: "looked up",
  },
  stopSign: {
    work: "Web page for growers on harvesting asparagus, bobandjeff.com (original author not shown)",
    tag: "second-hand",
  },
  feller2007: {
    work:
      "Feller, C., Fink, M. (2007, authors, year and pages from memory). Refraction as a measure of soluble " +
      "carbohydrates in storage roots of asparagus. HortScience 42, 57-60; abstract read",
    tag: "looked up",
  },
  pressman1993: {
    work:
      "Pressman, E., Schaffer, A.A., Compton, D., Zamski, E. (1993). Seasonal changes in the carbohydrate content of " +
      "two cultivars of asparagus. Scientia Horticulturae 53, 149-155; abstract read",
    tag: "looked up",
  },
  penningDeVries1974: {
    work:
      "Penning de Vries, F.W.T., Brunsting, A.H.M., van Laar, H.H. (1974). Products, requirements and efficiency of " +
      "biosynthesis: a quantitative approach. Journal of Theoretical Biology 45, 339-377",
    tag: "memory",
  },
  nistHandbook: {
    work:
      "NIST/SEMATECH. e-Handbook of Statistical Methods, 1.3.5.2 (limits of a mean) and 7.2.2.2 (sample sizes). " +
      "National Institute of Standards and Technology; the first as quoted elsewhere, the second from memory",
    tag: "second-hand",
  },
  fao56: {
    work:
      "Allen, R.G., Pereira, L.S., Raes, D., Smith, M. (1998). Crop evapotranspiration. FAO Irrigation and Drainage " +
      "Paper 56. Food and Agriculture Organization of the United Nations; equations and examples as quoted elsewhere",
    tag: "second-hand",
  },
  ruralNews: {
    work:
      "Rural News, New Zealand (date not shown). Summer delicacy takes a lot of work: a person cuts 1 ha of green " +
      "asparagus a day",
    tag: "looked up",
  },
  ucPostharvest: {
    work:
      "Suslow, T. (year not shown). Asparagus, produce facts of the Postharvest Center. University of California, Davis: " +
      "respiration, freezing point, storage",
    tag: "looked up",
  },
  handbook66: {
    work:
      "Hardenburg, R.E., Watada, A.E., Wang, C.Y. (1986). Commercial storage of fruits, vegetables, and florist and nursery " +
      "stocks. Agriculture Handbook 66. United States Department of Agriculture; as quoted elsewhere",
    tag: "second-hand",
  },
  ncState: {
    work:
      "North Carolina State University, Biological and Agricultural Engineering (date not shown). Specific heat and heat of " +
      "respiration: asparagus 0.94 BTU/lb·°F",
    tag: "looked up",
  },
  precooling: {
    work: "Half-cooling times of asparagus in moving water, ASHRAE Handbook, Refrigeration, chapter on precooling",
    tag: "memory",
  },
  deEll2002: {
    work:
      "DeEll, J., Roddy (2002). Trial of delays before cooling, Ontario, as reported by postharvest.biz on 25 March 2020: " +
      "weight lost in the sun, firmness, looks and rot after 1 to 4 hours",
    tag: "second-hand",
  },
  hexamer1901: {
    work: "Hexamer, F.M. (1901). Asparagus, its culture for home use and for market. Orange Judd, New York: inside of the old crate",
    tag: "looked up",
  },
  usGrades: {
    work:
      "United States Department of Agriculture. United States Standards for Grades of Fresh Asparagus: diameter classes, " +
      "as quoted in two trade summaries",
    tag: "second-hand",
  },
  cffm: {
    work: "Center for Farm Financial Management, University of Minnesota: reference sheet of farm finance ratios (later printing), as quoted by others",
    tag: "second-hand",
  },
  langemeier2025: {
    work:
      "Langemeier, M. (2025). Measuring repayment capacity and farm growth potential. Hoosier Banker 109(1), table 1; " +
      "measures of the Farm Financial Standards Council",
    tag: "looked up",
  },
  cfr400: {
    work:
      "Code of Federal Regulations (United States), title 7, section 400.52: approved yields of crop insurance. A rule of " +
      "30 June 2023 (88 FR 42015) moved it into the policies: ask for the text now in force",
    tag: "looked up",
  },
  theilSen: {
    work:
      "Theil, H. (1950), Proceedings of the Royal Netherlands Academy of Sciences 53; Sen, P.K. (1968), Journal of the " +
      "American Statistical Association 63, 1379-1389: the middle of all slopes between two points",
    tag: "memory",
  },
  soilFromAir: {
    work:
      "Stand-in of this planner for soil at crown depth: the air with 0.75 of its swing and 20 days later. " +
      "Compare it with your own thermometer",
    tag: "assumption",
  },
  openFormula: {
    work:
      "OASIS (2011). Open Document Format for Office Applications (OpenDocument) Version 1.2, Part 2: Recalculated " +
      "Formula (OpenFormula) Format. OASIS Standard, 29 September 2011; also ISO/IEC 26300-2:2015; text as quoted elsewhere",
    tag: "second-hand",
  },
  faustmann1849: {
    work:
      "Faustmann, M. (1849). Berechnung des Wertes, welchen Waldboden sowie noch nicht haubare Holzbestände für die " +
      "Waldwirthschaft besitzen. Allgemeine Forst- und Jagd-Zeitung 15, 441-455",
    tag: "memory",
  },
  perrin1972: {
    work: "Perrin, R.K. (1972). Asset replacement principles. American Journal of Agricultural Economics 54, 60-67",
    tag: "memory",
  },
  newnan: {
    work:
      "Newnan, D.G., Eschenbach, T.G., Lavelle, J.P. (edition not shown). Engineering Economic Analysis, chapter 13, " +
      "examples 13-2 and 13-4. Oxford University Press",
    tag: "looked up",
  },
  burt1999: {
    work: "Burt (1999; title not shown), on cling peaches. California Agriculture 53(3), 30-32",
    tag: "looked up",
  },
  reed1984: {
    work:
      "Reed, W.J. (1984). The effects of the risk of fire on the optimal rotation of a forest. Journal of Environmental " +
      "Economics and Management 11, 180-190",
    tag: "memory",
  },
  mirandaFackler2002: {
    work:
      "Miranda, M.J., Fackler, P.L. (2002). Applied Computational Economics and Finance, 7.6 (publisher, from memory: MIT Press); examples as " +
      "worked by Oyama, D., in the QuantEcon notebooks",
    tag: "second-hand",
  },
} as const satisfies Record<string, Source>

export type SourceKey = keyof typeof sources
