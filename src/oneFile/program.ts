import {answerAs} from "../studies/anyWorker"
import type {StudyName} from "../studies/startWorker"

// One script is the page and, started again without one, each of its workers.
if (typeof document === "undefined") void answerAs(self.name as StudyName)
else void import("../main")
