import { expose } from "comlink";
import { BenchDesk } from "./bench-desk.ts";

expose(new BenchDesk());
