import "./zod-without-eval.ts";
import "uplot/dist/uPlot.min.css";
import "./style/main.css";
import { startPage } from "./page.ts";

startPage(document.getElementById("app")!);
