import { expose } from "comlink";
import { CurveDesk } from "./curve-desk.ts";

expose(new CurveDesk());
