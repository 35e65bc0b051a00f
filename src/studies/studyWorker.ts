import {answerAs} from "./anyWorker"
import type {StudyName} from "./startWorker"

void answerAs(self.name as StudyName)
