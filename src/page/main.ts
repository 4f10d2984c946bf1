import { breath } from "./dom/breath.ts";
import { startPage } from "./page.ts";

void breath().then(() => startPage(document.getElementById("app")!));
