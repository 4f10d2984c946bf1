// What piscina loads, by `require`. Were that the worker's bundle, an ES module, ending the thread while it is still being
// instantiated would abort the whole process (Node 20.20: "IsGraphAsync must be used on an instantiated module").
import type { Task } from "./task.ts";

const loading = import("./worker.js");

export = async (task: Task) => (await loading).default(task);
