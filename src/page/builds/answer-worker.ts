import { expose } from "comlink";
import { AnswerDesk } from "./answer-desk.ts";

expose(new AnswerDesk());
