import { expose } from "comlink";
import { CellDesk } from "./cell-desk.ts";

expose(new CellDesk());
