import type {Question} from "./store"

const asks = "This is a reading copy. Make your own copy to try changes?"
const question: Question = {
  asks,
  yes: "Make my own copy",
  edit: {type: "makeOwn"},
  told: "This copy is yours: nothing you change goes back to whoever gave it to you.",
}

/** What answers every attempt to change a reading copy. */
export const askToOwn = {question, said: asks}
