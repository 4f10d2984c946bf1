import { startPage } from "./page.ts";

void startPage(document.getElementById("app")!);
