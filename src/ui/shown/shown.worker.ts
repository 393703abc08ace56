import { answerAsks } from '../../partner/index.ts'

answerAsks(self)
